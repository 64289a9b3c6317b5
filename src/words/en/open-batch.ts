import { type Said, said, strong } from '#words/said.ts';

export const openBatch = {
  title: 'Open a batch',
  sentence: (name: string, version: number): Said =>
    said(
      'The batch keeps ',
      strong(`${name}, version ${version}`),
      ' whole; later edits of the formula never reach it.',
    ),
  lot: 'Lot',
  lotHint: 'Suggested from the date; change it if you number lots another way.',
  lotTaken: 'Another batch has this lot already.',
  plan: 'Plan',
  planLine: 'What you aim at. It can be changed while the batch runs; every change is kept.',
  planLineMuscle:
    'What you aim at. A whole muscle is salted and hung: no ferment is planned, and no degree-hours are asked for.',
  field: {
    fermentC: 'Fermenting room',
    phLow: 'from',
    phHigh: 'to',
    dryC: 'Drying room',
    dryRhPct: 'Humidity while drying',
    diameterMm: 'Diameter at stuffing',
    targetLossPct: 'Weight loss aimed at',
  },
  group: { ferment: 'Ferment', ph: 'pH aimed at', dry: 'Dry', piece: 'Pieces' },
  usual: (from: string, to: string): string => `usually ${from} to ${to}`,
  fromFormula: 'from the formula',
  standing:
    'The usual ranges are common practice of the trade, without a published source. They are no limits.',
  phOrder: 'The lower pH stands first.',
  ruleSet: 'Rule set of this batch',
  ruleSetHint: 'It stays with the batch, whatever is chosen in Kit later.',
  ruleSetIs: (name: string): Said =>
    said('Rule set: ', strong(name), '. It stays with the batch, whatever is chosen in Kit later.'),
  compared: (day: string | null): string =>
    day === null
      ? 'Its figures were never compared with the official text.'
      : `Its figures were compared with the official text on ${day}.`,
  over: 'As written, this formula is a deviation from this rule set. Look at it before you weigh, and ask the local authority.',
  noRoom: 'The percentages of total leave no room for meat.',
  stopped: 'This has to be put right first',
  notYet: 'Not yet',
  allTheSame: 'Open it',
  askGuard: (text: string): string => `${text} Open the batch all the same?`,
  toFormula: 'Look at the formula',
  meatReady: 'Meat that lies ready',
  meatHint:
    'May stay empty. The weigh-out is counted against it: a tray forgotten or weighed twice is asked about before anything is mixed.',
  meatField: { meat: 'Lean and fat in all', trays: 'Trays or lots' },
  wholeTrays: 'Type a whole number.',
  note: 'Note',
  save: 'Open the batch',
  lookAbove: 'Something above has to be filled in or put right first.',
  unlikely: (label: string, value: string, from: string, to: string): string =>
    `${label} ${value}: usually it is ${from} to ${to}. Is that what you mean?`,
};
