import { type Said, said, strong } from '#words/said.ts';

/** Checks of instruments: what a meter, a thermometer, a hygrometer and a scale show where the truth is known. */
export const instruments = {
  title: 'Checks of instruments',
  none: said(
    'No scale and no meter stands in the kit. ',
    strong('Add them'),
    ' first, then check them here.',
  ),
  sentence: {
    due: (names: string): Said => said('Check ', strong(names), ': never checked, or too long ago.'),
    failed: (names: string): Said =>
      said(strong(names), ' failed the last check: what was read since the last good one stops no clock.'),
    good: said('Every instrument was checked, and none of them failed.'),
  },
  toKit: 'Scales and meters',
  never: 'never checked',
  failedNote: (ago: string) => `failed ${ago}`,
  checkedNote: (ago: string) => `checked ${ago}`,
  dueNote: (when: string) => `next ${when}`,
  dueNow: 'due now',
  what: {
    'ph-meter': 'pH meter',
    thermometer: 'Thermometer',
    hygrometer: 'Hygrometer',
    scale: 'Scale',
  },
  one: {
    how: {
      'ph-meter': said(
        'Two fresh buffers, one near 7 and one near 4, rinsed between. ',
        strong('Type what it shows in each'),
        ', and how warm the buffers are.',
      ),
      thermometer: said(
        'A glass full of crushed ice with a little water, stirred, three minutes. ',
        strong('It should show 0 °C'),
        ' (32 °F).',
      ),
      hygrometer: said(
        'Table salt, made wet, in a closed box with the hygrometer for 8 to 12 hours. ',
        strong('It should show 75 %'),
        '.',
      ),
      scale: said('A weight that is known, in the middle of the pan. ', strong('Type what it shows'), '.'),
    },
    passed: (when: string): Said => said('Checked ', when, ': ', strong('within its limits'), '.'),
    failed: (when: string): Said =>
      said(
        'Checked ',
        when,
        ': ',
        strong('it failed'),
        '. Clean it, put it right or replace it, and check again. What was read since the last good check stops no clock.',
      ),
    incomplete: (when: string): Said =>
      said('Checked ', when, ', but ', strong('not enough was read'), ' to tell.'),
    scaleOff: (off: string, pct: string, when: string): Said =>
      said('Checked ', when, ': off by ', strong(`${off} (${pct})`), '.'),
    scaleTrue: (when: string): Said => said('Checked ', when, ': ', strong('it shows the weight'), '.'),
    nextDue: (when: string): Said => said(' Next check ', strong(when), '.'),
    overdue: (ago: string): Said => said(' ', strong('The next check is due'), `: that was ${ago}.`),
  },
  act: {
    'ph-meter': 'Check in buffers',
    thermometer: 'Check in ice',
    hygrometer: 'Check over wet salt',
    scale: 'Check with a weight',
  },
  figures: {
    offset: 'offset at pH 7',
    slope: 'slope, of Nernst',
    worn: 'below 95 %: many call it worn',
    shown: (buffer: string) => `shown in ${buffer}`,
    truth: (ph: string, at: string) => `it has pH ${ph} at ${at}`,
    add: 'added to every later reading',
    addNote: 'the value as shown stays on the record',
    shownIce: 'shown in ice',
    shownSalt: 'shown over wet salt',
    off: 'off by',
  },
  history: 'Checks so far',
  ok: 'within limits',
  bad: 'failed',
  partial: 'not enough was read',
  field: {
    shownIn: 'What does it show?',
    seven: 'Buffer near 7',
    four: 'Buffer near 4',
    warmth: (buffer: string) => `Temperature of buffer ${buffer}`,
    shown: (buffer: string) => `Shown in buffer ${buffer}`,
    ice: 'Shown in ice',
    salt: 'Shown over wet salt',
    rested: 'Hours in the box',
    weight: 'The check weight is',
    shownWeight: 'The scale shows',
    save: 'Save the check',
  },
  work: {
    meter: {
      title: 'Check of a pH meter',
      ph: 'slope = (shown near 7 − shown near 4) ÷ (buffer pH near 7 − buffer pH near 4); offset = (buffer pH − shown) × Nernst slope',
      mV: 'slope = (mV near 4 − mV near 7) ÷ (pH near 7 − pH near 4) ÷ Nernst slope; Nernst slope = 0.1984 × (t + 273.15) mV',
      nernst: 'Nernst slope at this temperature',
      error: (buffer: string) => `error in buffer ${buffer}`,
      offset: 'offset, −30 to +30 mV',
      slope: 'slope, 85 to 105 %',
    },
    ice: { title: 'Check of a thermometer', equation: 'offset = 0 °C − what it shows in melting ice' },
    salt: { title: 'Check of a hygrometer', equation: 'offset = 75 % − what it shows over wet table salt' },
    offset: 'offset',
    shown: 'shown',
    rested: 'hours in the box, at least 8',
  },
  rule: {
    'ph-meter-check': 'meter',
    'thermometer-ice-check': 'thermometer',
    'hygrometer-salt-check': 'hygrometer',
  } as Readonly<Record<string, string>>,
  missing: {
    'buffer-near-7': 'a buffer near 7',
    'buffer-near-4': 'a buffer near 4',
    'rest-over-salt': 'at least 8 hours in the box',
  } as Readonly<Record<string, string>>,
};
