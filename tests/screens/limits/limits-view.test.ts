import { describe, expect, it } from 'vitest';
import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import { freezingTable } from '#core/rules/freezing.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import { place } from '#record/place.ts';
import { limitsView } from '#screens/limits/limits-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';

const here = place([]);
const view = limitsView(en, here);
const set = (id: string) => view.sets.find((each) => each.id === id);
const all = view.sets.flatMap(({ groups }) => groups.flatMap(({ limits }) => limits));
const practice = view.practice.flatMap(({ limits }) => limits);

describe('where the numbers come from', () => {
  it('shows every limit of every rule set once', () => {
    const counted = (['US', 'CA', 'EU'] as const)
      .map((id) => {
        const { formula, laboratory } = RULE_SETS[id];
        const hours = DEGREE_HOUR_RULES[id].classes.length + 2;
        const lots = [
          { method: 'room', thicknessMm: 1 },
          { method: 'room', thicknessMm: 400 },
          { method: 'core', thicknessMm: 1 },
        ] as const;
        const freezing = lots.flatMap((lot) => freezingTable({ ruleSet: id, ...lot })?.rows ?? []);
        return formula.length + laboratory.length + hours + freezing.length;
      })
      .reduce((sum, each) => sum + each, 0);
    expect(all.flatMap(({ values }) => values)).toHaveLength(counted);
    expect(plainText(view.sentence)).toContain(`${counted} limits`);
  });

  it('shows each with its relation, base, source and standing in words, never as a code', () => {
    for (const { title, values, basis, source } of [...all, ...practice]) {
      expect(title).toMatch(/^(pH|[A-Z])/);
      for (const value of values)
        expect(value).toMatch(/(^|: )(less than|at most|more than|at least) [\u2212\d\u202f.]+ \S/);
      expect(basis).toMatch(/ /);
      expect(basis).not.toContain('-meat');
      expect(source.text.length).toBeGreaterThan(10);
      expect(source.standing.length).toBeGreaterThan(10);
    }
  });

  // American Meat Institute 1997: 1200 below 90 °F, 1000 from 90 to 100 °F, 900 above (read second-hand and from memory, high).
  it('tells the classes of degree-hours apart by the room', () => {
    const hours = set('US')?.groups[1]?.limits.map(({ of, values }) => [of, ...values]);
    expect(hours).toEqual([
      [null, 'more than 60 °F'],
      [null, 'at most 5.3 pH'],
      ['room below 90\u00a0°F', 'less than 1\u202f200 degree-hours (°F)'],
      ['room from 90\u00a0°F to 100\u00a0°F', 'less than 1\u202f000 degree-hours (°F)'],
      ['room above 100\u00a0°F', 'less than 900 degree-hours (°F)'],
    ]);
  });

  // 9 CFR 318.10(c)(2), table 1, as given in J. Am. Med. Assoc. 1954 (read): 5 °F 20 days, -10 °F 10 days, -20 °F 6 days.
  it('shows the freezing times with the thickness they hold for, and that the text stands empty', () => {
    const group = set('US')?.groups.find(({ title }) => title.startsWith('Freezing'));
    expect(group?.note).toContain('stands empty since 2018');
    expect(group?.limits[0]?.of).toBe('pieces or layers up to 152\u00a0mm');
    expect(group?.limits[0]?.values).toEqual([
      '−15.0\u00a0°C or colder: at least 20 days',
      '−23.3\u00a0°C or colder: at least 10 days',
      '−28.9\u00a0°C or colder: at least 6 days',
    ]);
    expect(group?.limits.at(-1)?.values.at(-1)).toBe('−37.2\u00a0°C or colder: at least 0.5 h');
    expect(set('CA')?.groups.find(({ title }) => title.startsWith('Freezing'))?.note).toContain(
      'no verdict here',
    );
  });

  it('shows what is common practice apart from the rule sets, and says so', () => {
    expect(view.practice.map(({ title }) => title)).toEqual(['Instruments', 'Cold at the bench']);
    for (const { source } of view.practice[1]?.limits ?? [])
      expect(source.standing).toBe('common practice of the trade; no published source');
  });

  it('says that none was ever compared with the official text', () => {
    for (const { summary } of view.sets) expect(summary).toContain('Never compared with the official text.');
    expect(plainText(view.sentence)).toContain('None was compared with the official text');
  });

  it('says from which day the European limits apply', () => {
    expect(set('EU')?.lines[0]).toBe('Applies from 9 October 2025.');
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
