import { type Said, said, strong } from '#words/said.ts';

const measures = {
  ph: 'pH',
  aw: 'water activity',
  mpr: 'moisture to protein',
  'ph-after-ferment': 'pH at the end of the ferment',
} as const;

export const dryness = {
  title: 'What the target means',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: ({ loss, low, high }: { loss: string; low: string; high: string }): Said =>
    said(
      `At ${loss}\u00a0% loss this mix should come to a water activity between ${low} and ${high}: `,
      strong('an estimate'),
      '. Only what is measured counts.',
    ),
  measuredAw: ({ aw, when }: { aw: string; when: string }): Said =>
    said(`Measured: water activity `, strong(aw), `, ${when}. It counts before anything computed.`),
  noPieces: said('No piece was weighed at stuffing, so there is no target to look at.'),
  table: 'By loss of green weight, computed',
  columns: ['loss', 'water', 'water to protein', 'salt in water', 'water activity'],
  now: 'now, middle piece',
  target: 'target',
  aw: (low: string, high: string) => `~${low} to ${high}`,
  about: (value: string) => `~${value}`,
  source:
    'Water and protein from tables of raw cuts and what was weighed; all that leaves is water. Water activity by the multiplicative rule (Ross 1975) with Pitzer and Mayorga (1973) for the brine; 8 in 10 meters should read within the interval. Computed, for no verdict.',
  criteria: 'Published criteria',
  ofRules: (rules: string) => rules,
  rule: {
    'dry-sausage-shelf-stable': 'Dry sausage, shelf stable',
    'semi-dry-sausage-shelf-stable': 'Semi-dry sausage, shelf stable',
    pepperoni: 'Pepperoni',
    'listeria-no-growth': 'Listeria monocytogenes cannot grow',
    'shelf-stable': 'Shelf stable fermented sausage',
  } as Readonly<Record<string, string>>,
  measure: measures,
  limit: (measure: keyof typeof measures, most: string) => `${measures[measure]} at most ${most}`,
  and: (parts: readonly string[]) => parts.join(' and '),
  near: (loss: string) => `by computation near ${loss}\u00a0% loss`,
  fresh: 'by computation already so when fresh',
  missing: (names: readonly string[]) => `To measure: ${names.join(', ')}.`,
  alongside: 'Other rules have to hold as well; the release page lists them.',
  measured: 'Measured values',
  none: 'Nothing measured yet.',
  by: (value: string, by: string) => [value, by].filter(Boolean).join(', '),
  caution:
    'A computed value never releases a batch, and a criterion that is met does not make food safe. Ask the local authority which one applies to you.',
  act: 'Enter a measured value',
  sheet: {
    title: 'Measured value',
    measure: 'What was measured',
    measures: { aw: 'Water activity', mpr: 'Moisture to protein' },
    value: 'Value',
    valueHint: { aw: 'Such as 0.89', mpr: 'Such as 1.6: parts of water to one of protein' },
    by: 'By',
    byHint: 'Meter or laboratory, and its report',
    note: 'Note',
    save: 'Save',
    choose: 'Choose one',
    needed: 'Say by whom or what.',
  },
};
