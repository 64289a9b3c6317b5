import { type Said, said, strong } from '#words/said.ts';
import { today } from './today.ts';

/** What to do once the degree-hour limit is passed, and the page after a power cut or a controller fault. */
export const afterFault = {
  step: {
    hold: 'Hold the whole batch, apart and marked',
    'notify-authority': 'Tell the food authority',
    'sample-after-drying': 'Take samples after drying, as many as the authority says',
    'test-staphylococcus-and-toxin': 'Have them tested for Staphylococcus aureus and its toxin',
    'test-other-pathogens': 'Have them tested for E. coli O157 and Salmonella as well',
    'destroy-if-toxin': 'Destroy the batch if toxin is found',
    'decide-with-authority': 'Decide with the authority; this app decides nothing',
    record: 'Write down cause, what was done, where the product is, and what keeps it from happening again',
  },
  never: { 'ferment-longer': 'ferment longer', cook: 'cook it' },
  neverTitle: (what: string) => `Never: ${what}`,
  steps: 'What the sources say to do; tick what is done',
  sources: 'Where it says so',
  reference: 'The EU set has no degree-hour rule; these are the Canadian steps, for reference.',
  title: today.ways.afterFault.title,
  toBatches: 'Batches',
  sentence: {
    none: said('No batch is running.'),
    some: (count: number): Said =>
      said(
        `Power cut, or a controller that failed: ${count === 1 ? 'one batch' : `${count} batches`} beside the limits. `,
        strong('Read room and pH of each now'),
        ', then write down what you did. Nothing on this page calls a batch safe.',
      ),
    passed: (names: string): Said =>
      said(
        strong(names),
        ': the degree-hour limit is reached. ',
        strong('Hold, test, decide, record'),
        '. Nothing on this page calls any other batch safe.',
      ),
  },
  stage: {
    'weigh-out': 'weighing out',
    bench: 'at the bench',
    ferment: 'ferment',
    hanging: 'drying',
    finished: 'taken down, not decided',
  },
  rows: {
    since: 'Stuffed',
    above: (base: string) => `Above ${base}`,
    unread: (hours: string) => `${hours} not read`,
    sum: 'Degree-hours',
    of: (sum: string, limit: string) => `${sum} of ${limit}`,
    worst: 'At worst, unread hours at the warmest',
    warmest: 'Warmest room',
    now: 'Room last read',
    ph: 'pH last read',
    phLimit: (ph: string, ago: string) => `${ph}, ${ago}; counted until 5.3`,
    loss: 'Loss so far',
    lossOf: (mean: string, count: number, target: string) =>
      `${mean} of ${count === 1 ? 'one piece' : `${count} pieces`}; target ${target}`,
    air: 'Air of the chamber',
    warmestAir: 'Warmest air in seven days',
    airAbove: (base: string) => `Air above ${base} in seven days`,
    none: 'no reading',
    noLimit:
      'No published limit of this stage is held here. Warm and damp it moulds and may spoil: smell, look, weigh, and ask the authority before it is sold.',
  },
  open: 'Ferment of this batch',
  act: 'Write down what was done',
  form: {
    what: 'What happened?',
    kinds: { 'power-cut': 'power cut', 'controller-fault': 'controller fault', 'other-fault': 'other' },
    batches: 'Which batches does it concern?',
    cause: 'What failed, from when to when',
    action: 'What was done',
    product: 'Where the product is now',
    prevention: 'What keeps it from happening again',
    save: 'Save for these batches',
    needed: 'Say at least what was done.',
    choose: 'Choose at least one.',
  },
  saved: (count: number) => (count === 1 ? 'Saved for one batch' : `Saved for ${count} batches`),
};
