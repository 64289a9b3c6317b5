import { describe, expect, it } from 'vitest';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import { place } from '#record/place.ts';
import { limitsView } from '#screens/limits/limits-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';

const here = place([]);
const view = limitsView(en, here);
const set = (id: string) => view.sets.find((each) => each.id === id);
const all = view.sets.flatMap(({ groups }) => groups.flatMap(({ limits }) => limits));

describe('where the numbers come from', () => {
  it('shows every limit of every rule set once', () => {
    const counted = (['US', 'CA', 'EU'] as const)
      .map((id) => {
        const { formula, laboratory } = RULE_SETS[id];
        return formula.length + laboratory.length + DEGREE_HOUR_RULES[id].classes.length + 1;
      })
      .reduce((sum, each) => sum + each, 0);
    expect(all).toHaveLength(counted);
    expect(plainText(view.sentence)).toContain(`${counted} limits`);
  });

  it('shows each with its relation, base, source and standing in words, never as a code', () => {
    for (const { title, value, basis, source } of all) {
      expect(title).toMatch(/^[A-Z]/);
      expect(value).toMatch(/^(less than|at most|more than|at least) [\d\u202f.]+ \S/);
      expect(basis).toMatch(/ /);
      expect(basis).not.toContain('-meat');
      expect(source.text.length).toBeGreaterThan(10);
      expect(source.standing.length).toBeGreaterThan(10);
    }
  });

  // American Meat Institute 1997: 1200 below 90 °F, 1000 from 90 to 100 °F, 900 above (read second-hand and from memory, high).
  it('tells the classes of degree-hours apart by the room', () => {
    const hours = set('US')?.groups[1]?.limits.map(({ of, value }) => [of, value]);
    expect(hours).toEqual([
      [null, 'more than 60 °F'],
      ['room below 90\u00a0°F', 'less than 1\u202f200 degree-hours (°F)'],
      ['room from 90\u00a0°F to 100\u00a0°F', 'less than 1\u202f000 degree-hours (°F)'],
      ['room above 100\u00a0°F', 'less than 900 degree-hours (°F)'],
    ]);
  });

  it('says that none was ever compared with the official text', () => {
    for (const { lines } of view.sets) expect(lines[0]).toBe('Never compared with the official text.');
    expect(plainText(view.sentence)).toContain('None was compared with the official text');
  });

  it('says from which day the European limits apply', () => {
    expect(set('EU')?.lines[1]).toBe('Applies from 9 October 2025.');
  });

  it('says that the European rule set has no degree-hours of its own', () => {
    expect(set('EU')?.groups[1]?.note).toContain('no degree-hours of its own');
    expect(set('CA')?.groups[1]?.note).toBeNull();
  });

  it('puts the rule set in force first, and marks it', () => {
    const canadian = limitsView(en, { ...here, ruleSet: 'CA' });
    expect(canadian.sets.map(({ id, inForce }) => [id, inForce])).toEqual([
      ['CA', true],
      ['US', false],
      ['EU', false],
    ]);
  });

  it('shows conflicting values together, each with its source', () => {
    const aw = view.conflicts.find(({ topic }) => topic.startsWith('Least water activity'));
    expect(aw?.says.map(({ text }) => text)).toEqual(['0.83', '0.86']);
    for (const { says } of view.conflicts)
      for (const { source } of says) expect(source.standing).not.toBe('');
  });
});
