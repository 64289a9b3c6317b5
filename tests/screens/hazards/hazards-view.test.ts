import { describe, expect, it } from 'vitest';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import { place } from '#record/place.ts';
import { hazardsView } from '#screens/hazards/hazards-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';

const here = place([]);
const view = hazardsView(en, here);
const section = (id: string) => {
  const found = view.find((each) => each.id === id);
  if (!found) throw new Error(`no section ${id}`);
  return found;
};
const facts = (id: string) => section(id).facts.map(({ text }) => text);

describe('the hazards page', () => {
  it('speaks of every hazard that the house names', () => {
    expect(view.map(({ id }) => id)).toEqual([
      'botulism',
      'nitrite',
      'staphylococcus',
      'coliSalmonella',
      'listeria',
      'trichinella',
      'moulds',
      'eaters',
      'salt',
      'noCure',
      'noStarter',
      'game',
      'ill',
      'app',
      'selling',
    ]);
  });

  it('says in each section what to do, in bold', () => {
    for (const { id, sentence } of view)
      expect([id, sentence.filter((token) => token.strong).length]).toEqual([id, 1]);
  });

  it('gives every published line a source, and every source its standing', () => {
    const all = view.flatMap(({ facts: lines }) => lines);
    expect(all.length).toBeGreaterThan(25);
    for (const { text, sources } of all) {
      expect([text, sources.length > 0]).toEqual([text, true]);
      for (const source of sources) {
        expect(source.text).not.toBe('');
        expect(source.standing).not.toBe('');
      }
    }
  });

  it('uses the word safe only in a negation', () => {
    const text = view.flatMap(({ title, sentence, text: lines, facts: published }) => [
      title,
      plainText(sentence),
      ...lines,
      ...published.map((fact) => fact.text),
    ]);
    const said = text.filter((line) => /\bsafe/i.test(line));
    expect(said).toEqual(['It computes from what was typed in. It does not make food safe.']);
  });

  it('says the limits of the rule sets themselves, not numbers of its own', () => {
    const nitrite = facts('nitrite').join(' ');
    expect(nitrite).toContain('156.25\u00a0mg/kg');
    expect(nitrite).toContain('625\u00a0mg/kg');
    expect(RULE_SETS.EU.formula[0]?.limit.value).toBe(80);
    expect(nitrite).toContain('80\u00a0mg/kg');
    const hours = facts('staphylococcus').join(' ');
    for (const { limit } of [...DEGREE_HOUR_RULES.CA.classes, ...DEGREE_HOUR_RULES.US.classes])
      expect(hours.replaceAll('\u202f', '')).toMatch(new RegExp(`\\b${limit.value}\\b.* degree-hours`));
  });

  it('says that degree-hours speak of Staphylococcus aureus only, and offers no remedy', () => {
    const text = section('staphylococcus').text.join(' ');
    expect(text).toContain('They speak of Staphylococcus aureus only');
    expect(text).toContain('Neither more fermenting nor cooking takes back a limit that was passed.');
  });

  it('shows both values where two sources disagree on the least water activity', () => {
    const fact = section('staphylococcus').facts.at(-1);
    expect(fact?.text).toContain('0.83 and 0.86');
    expect(fact?.sources).toHaveLength(2);
  });

  it('writes numbers and temperatures as the maker does', () => {
    const german = hazardsView(en, { ...here, decimal: ',', temperature: 'C' });
    expect(german.find(({ id }) => id === 'botulism')?.facts[0]?.text).toContain('0,93');
    const american = hazardsView(en, { ...here, temperature: 'F' });
    const freezing = american.find(({ id }) => id === 'trichinella')?.facts[0]?.text;
    // 5, -10 and -20 °F in 9 CFR 318.10(c)(2), table 1; the page holds the rounded °C of the abstract.
    expect(freezing).toContain('5.0\u00a0°F');
    expect(freezing).toContain('−9.9\u00a0°F');
  });
});
