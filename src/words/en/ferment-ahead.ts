import { type Said, said, strong } from '#words/said.ts';

/** What lies ahead of a ferment, what speaks against a reading, and what was read. Estimates carry "~" or a window. */
export const fermentAhead = {
  sentence: {
    /** The window is of 80 %: one in ten earlier, one in ten later. */
    stop: (likely: string, early: string, late: string): Said =>
      said(` pH 5.3 should come `, strong(`~${likely}`), ` (${early} to ${late}).`),
    open: (early: string): Said => said(` pH 5.3 may come from ~${early} on, or not within four days.`),
    never: said(' pH 5.3 is not to be expected within four days.'),
    band: (likely: string): Said => said(` The target band should follow ~${likely}.`),
    next: (when: string): Said => said(' Read the pH next ', strong(when), '.'),
    nextNow: said(' ', strong('Read the pH now'), '.'),
  },
  why: {
    confirm: 'a reading at the target waits for a second one',
    first: 'the first test of the packet, 18 h after stuffing (12 h with a fast culture)',
    flat: 'the last two readings are alike',
    near: 'it is close to 5.3',
    usual: 'one every 6 to 12 h',
    'before-limit': 'half of the hours that are left',
  },
  figures: {
    left: (room: string) => `left at ${room}`,
    leftNote: 'rounded down',
    leftReference: 'by the Canadian numbers, for reference; no rule binds here',
    over: 'none',
    never: 'not counted',
    next: 'next pH',
    now: 'now',
    stop: 'pH 5.3',
    band: (ph: string) => `pH ${ph}, your band`,
    window: (early: string, late: string) => `${early} to ${late}, 8 in 10`,
    from: (early: string) => `from ${early}, 8 in 10; perhaps not within four days`,
    end: 'ends at pH',
    endWindow: (low: string, high: string) => `${low} to ${high}, 8 in 10`,
    humidity: (ago: string) => `humidity ${ago}`,
    shown: (shown: string) => `shown ${shown}`,
    humidityFailed: 'the hygrometer failed its check',
    humidityRange: 'published: 90 to 95 % (second-hand)',
    worst: 'if the room was at its warmest where it was not read',
    worstNote: (hours: string, limit: string) => `${hours} not read; limit ${limit}`,
  },
  bar: {
    due: (likely: string, latest: string) => `~${likely} to ${latest} when pH 5.3 is due`,
    dueFrom: (likely: string) => `~${likely} when pH 5.3 is likely`,
  },
  chart: { now: 'now', label: ' The tinted band is where it should go, 8 in 10.' },
  roomChart: {
    title: 'Room since stuffing',
    label: (highest: string) => `How warm it was since stuffing; the warmest was ${highest}.`,
    columns: ['Hours', 'Least', 'Most', 'Readings'],
    base: (temperature: string) => `counted above ${temperature}`,
    edge: (temperature: string, limit: string) => `from ${temperature} the limit is ${limit}`,
  },
  assumes: {
    'room-stays': 'the room stays at its last reading',
    'culture-unknown': 'how fast the culture is was not said',
    'sugar-unknown': 'the sugar is not known',
  },
  rests: ({ count, own, assumes }: { count: number; own: number; assumes: string }) =>
    [
      `The window rests on ${count === 1 ? 'one reading' : `${count} readings`}`,
      own === 0
        ? ''
        : own === 1
          ? ' and one earlier ferment of yours'
          : ` and ${own} earlier ferments of yours`,
      assumes ? `; ${assumes}` : '',
      '. No verdict rests on it.',
    ].join(''),
  hoursAt: {
    title: 'At another temperature',
    label: 'Room temperature',
    less: 'cooler',
    more: 'warmer',
    left: (hours: string) => `${hours} left`,
    none: 'nothing is counted',
    over: 'no hours left',
    note: (limit: string) => `limit ${limit} there; from now on, rounded down`,
    reference: 'Canadian numbers, for reference; no rule binds here',
    noteWarmer: (limit: string) => `warmer than it was: the limit falls to ${limit}`,
  },
  doubt: {
    ask: (ph: string) => `Is pH ${ph} right?`,
    tooFast: (drop: string, hours: string, most: string) =>
      `It fell by ${drop} in ${hours}; a culture makes about ${most} at most. Check the meter in its buffers again; is it the right sample, and was the probe clean?`,
    jumpedUp: (rise: string, hours: string) =>
      `It rose by ${rise} in ${hours}. A sausage does not do that: another sample, or a meter that drifts.`,
    risingOldSample: (rise: string, age: string) =>
      `It rose by ${rise}, and the sample is ${age} old: yeasts and moulds eat the acid of an old sample. Take one from a piece.`,
    mayBeFat: (ph: string) => `${ph} is what fat reads. Is the probe in lean?`,
    offScale: (ph: string) => `${ph} is outside what sausage can have, 4 to 7.`,
    sampleThinner: (sample: string, product: string) =>
      `The sample is ${sample} mm thick, the piece ${product} mm. A thin sample warms sooner and runs ahead of the piece: wait, or test a piece.`,
    calibrationNone: 'No buffer check of this meter is on record.',
    calibrationFailed:
      'This meter failed its last buffer check. Its reading goes on the record, but stops no clock.',
    calibrationOld: (age: string) => `This meter was last checked in its buffers ${age} before.`,
    check: 'Check the meter',
    sampleMm: 'Thickness of the packet',
    sampleMmHint: (product: string) => `may stay empty; the piece is ${product} mm`,
  },
  readings: {
    title: 'What was read',
    ph: (ph: string) => `pH ${ph}`,
    room: (temperature: string) => temperature,
    logged: (rows: string) => `${rows} readings from a file`,
    doubted: 'doubted',
    strip: 'strip',
    mix: 'fresh mix',
    kept: 'asked about and kept',
    meterFailed: 'meter failed its check',
    corrected: (raw: string) => `shown ${raw}`,
    humidity: (rh: string) => `humidity ${rh}`,
    humidityCorrected: (rh: string, raw: string) => `humidity ${rh} (shown ${raw})`,
    hygrometerFailed: 'hygrometer failed its check',
    disagrees: (hand: string, logger: string) =>
      `By hand ${hand}, by the logger beside it ${logger}: one of the two is wrong. Check both in ice.`,
    risen: 'A later reading lies above 5.3 again. One of the two may be wrong.',
    more: (count: number) => `Show all ${count}`,
    strike: 'Strike it',
    strikeTitle: 'Strike this reading',
    strikeText: 'It stays on the record as struck, and counts no longer.',
    reason: 'Why',
    reasonNeeded: 'Say why.',
  },
  programme: {
    act: 'Set the programme',
    title: 'Programme of the ferment',
    room: 'Room is set to',
    roomHint: (least: string, most: string) =>
      `common practice for a medium ferment: ${least} to ${most} for 18 to 24 h`,
    humidity: 'Humidity is set to',
    humidityHint: 'published for a warm stage: 90 to 95 % (read in a second-hand copy); may stay empty',
    pace: 'How fast is the culture?',
    paceHint: 'By its pack. The pH window rests on it.',
    paces: { fast: 'fast', medium: 'medium', slow: 'slow', none: 'no culture', unsaid: 'not known' },
    save: 'Save',
  },
  room: {
    doubt: 'Do you believe it?',
    thermometer: 'Which thermometer?',
    hygrometer: 'Which hygrometer?',
  },
};
