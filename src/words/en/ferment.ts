import { type Said, said, strong } from '#words/said.ts';

export const ferment = {
  title: 'Ferment',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: {
    notStuffed: said(
      'Not stuffed yet: the clock has not begun. ',
      strong('The pH of the fresh mix'),
      ' can be read now.',
    ),
    noRoom: said(
      'Stuffed, but no room temperature since. ',
      strong('Read the room'),
      ': without it the hours cannot be counted.',
    ),
    unfermented: said(
      'No ferment is planned. ',
      strong('Weigh each piece and hang it to dry'),
      ' when the salt has gone through. If it was kept warm, take in what a logger read of the room: then the hours count.',
    ),
    running: (room: string, until: string, left: string): Said =>
      said(`At ${room} the mix has until `, strong(until), ` to reach pH 5.3: `, strong(`${left} left`), '.'),
    neverRuns: (room: string): Said =>
      said(`At ${room} no degree-hours are counted. The clock stands until the room is warmer.`),
    stale: (ago: string): Said =>
      said(
        `The room was last read ${ago}. What it says holds only as far as that. `,
        strong('Read the room again.'),
      ),
    stopped: (ph: string, at: string): Said =>
      said(`pH ${ph} was read ${at}: `, strong('the clock has stopped'), '.'),
    passed: (at: boolean): Said =>
      said(
        strong(at ? 'The degree-hour limit is reached' : 'The degree-hour limit is passed'),
        '. Hold this batch, apart and marked. What follows is not warmer and not longer: ',
        strong('hold, test, decide, record'),
        '.',
      ),
    gap: (worst: string, limit: string): Said =>
      said(
        `The room was not read for too long. Had it stood at its warmest, the hours would come to ~${worst} of ${limit}. `,
        strong('Nobody knows'),
        '.',
      ),
    confirm: (why: string): Said =>
      said(
        `A pH at or below 5.3 stands on ${why}. `,
        strong('Read it again with a checked meter'),
        '; until then the clock runs.',
      ),
    ended: (at: string): Said =>
      said(`The ferment was ended ${at}. `, strong('Weigh each piece and hang it to dry.')),
    hung: (at: string): Said => said(`Moved to drying ${at}.`),
    reference: (sum: string, limit: string): Said =>
      said(
        `No degree-hour rule binds in the EU set. For reference, by the Canadian numbers: ${sum} of ${limit}.`,
      ),
  },
  why: { strip: 'a strip', doubted: 'a reading you doubt', 'meter-failed': 'a meter that failed its check' },
  band: {
    inside: (ph: string, low: string, high: string): Said =>
      said(` pH ${ph} is inside the target of ${low} to ${high}.`),
    above: (ph: string, low: string, high: string): Said =>
      said(` pH ${ph} is not yet in the target of ${low} to ${high}.`),
    below: (ph: string, low: string, high: string): Said =>
      said(` pH ${ph} is below the target of ${low} to ${high}.`),
  },
  rule: { 'degree-hours': 'degree-hours', 'ph-band': 'target pH' } as Readonly<Record<string, string>>,
  missing: {
    'room-temperature': 'no room temperature',
    'room-temperature-gap': 'the room was not read for too long',
    'room-temperature-doubted': 'a room temperature is doubted',
    'room-temperature-now': 'the room was not read lately',
    'room-temperature-at-end': 'no room temperature at the last pH',
    'ph-at-or-below-5-30': 'clock running, limit not passed',
    'ph-confirm-strip': 'a strip alone does not stop the clock',
    'ph-confirm-doubted': 'a doubted pH does not stop the clock',
    'ph-confirm-meter-failed': 'the meter failed its check',
    'ph-confirm-by-meter': 'to be confirmed by meter',
    ph: 'no pH yet',
    'ph-in-band': 'not yet in the band',
  } as Readonly<Record<string, string>>,
  figures: {
    ph: (ago: string) => `pH ${ago}`,
    noPh: 'pH',
    none: 'none',
    room: (ago: string) => `room ${ago}`,
    noRoom: 'room',
    used: 'degree-hours used',
    left: 'left at this temperature',
    leftNote: 'rounded down',
    crossing: 'crossed 5.3 about',
    crossingNote: 'on a line between two readings; no verdict rests on it',
  },
  bar: {
    label: (unit: string) => `degree-hours above ${unit}`,
    labelReference: (unit: string) => `degree-hours above ${unit}, Canadian numbers for reference`,
    used: (value: string) => `${value} used`,
    ahead: (value: string) => `~${value} by now`,
    limit: (value: string) => `limit ${value}`,
  },
  base: { US: '60 °F', CA: '15.6 °C' },
  chart: {
    title: 'pH since stuffing',
    y: 'pH',
    x: 'hours since stuffing',
    stops: '5.3 stops the clock',
    band: (low: string, high: string) => `target ${low} to ${high}`,
    label: (count: number) => (count === 1 ? 'One pH reading.' : `${count} pH readings.`),
    crossed: (count: number) =>
      count === 1
        ? ' One is crossed: not believed on its own.'
        : ` ${count} are crossed: not believed on their own.`,
    notBelieved: 'not believed on its own: by strip, doubted, or the meter failed its check',
    meterFailed: 'meter failed its check',
    waiting: 'Drawing',
    failed: 'The picture could not be drawn; the numbers stand below.',
    table: 'The same as numbers',
    columns: ['When', 'Hours', 'pH', 'How'],
  },
  method: { meter: 'meter', strip: 'strip' },
  sample: { mix: 'fresh mix', packet: 'packet of the same mix', piece: 'a piece itself' },
  doubted: 'doubted',
  act: {
    ph: 'Read pH',
    room: 'Read the room',
    more: 'More',
    end: 'End the ferment',
    hang: 'Move to drying',
    smoke: 'Write down smoke',
    action: 'Write down what was done',
  },
  ph: {
    title: 'pH',
    value: 'pH on the meter',
    sample: 'What was measured?',
    sampleHint: 'A packet of the same mix beside the pieces, as thick as they are.',
    method: 'How?',
    doubt: 'Do you believe it?',
    believed: 'yes',
    doubtful: 'no, I doubt it',
    meter: 'Which meter?',
    note: 'Note',
    save: 'Save',
    unlikely: (ph: string) =>
      `pH ${ph} is outside what sausage can have (4 to 7). Is that what the meter shows?`,
    jump: (ph: string, before: string, hours: string) =>
      `pH ${ph}, ${hours} after ${before}: that is faster than sausage turns acid. Check the meter in its buffers. Keep it?`,
    rose: (ph: string, before: string) =>
      `pH ${ph} after ${before}: it has risen. An old sample does that. Keep it?`,
  },
  room: {
    title: 'Room',
    value: 'Temperature of the room',
    humidity: 'Humidity',
    humidityHint: 'may stay empty',
    save: 'Save',
    unlikely: (value: string) => `${value} is not a room to ferment in. Is that what it shows?`,
  },
  end: {
    title: 'End the ferment',
    why: 'Why now?',
    reasons: {
      'ph-reached': 'pH reached',
      'time-reached': 'time over',
      'no-warm-stage': 'no warm stage',
      held: 'held',
      other: 'other',
    },
    note: 'Note',
    save: 'End it',
    unread:
      'No believed pH at or below 5.3 stands on the record. Ending it now leaves the degree-hours open.',
  },
  hang: {
    title: 'Move to drying',
    chamber: 'Which chamber?',
    none: 'not entered',
    temperature: 'Air there',
    humidity: 'Humidity there',
    note: 'Note',
    save: 'Hang it',
    round: 'Then weigh each piece.',
  },
  smoke: {
    title: 'Smoke',
    hours: 'How long',
    temperature: 'Temperature of the smoke',
    note: 'Wood, note',
    save: 'Save',
  },
  action: {
    title: 'Degree-hours passed',
    text: 'A toxin of Staphylococcus aureus may be there, and heat does not remove it. Do not cook it, do not ferment it longer. Hold the batch; tell your authority; have it tested after drying for the bacterium and its toxin; decide; write it down.',
    only: 'Degree-hours speak of Staphylococcus aureus only.',
    cause: 'Why it happened',
    action: 'What was done',
    product: 'Where the product is now',
    prevention: 'What keeps it from happening again',
    save: 'Save',
    toAct: 'Write down what was done',
    needed: 'Say at least what was done.',
  },
  work: {
    title: 'Degree-hours',
    equation:
      'sum of (room temperature − base) × hours, above the base only, from the first room temperature after stuffing to the first pH at or below 5.3',
    step: (hours: string, from: string, to: string) =>
      from === to ? `${hours} at ${from}` : `${hours} from ${from} to ${to}`,
    hours: (from: string, to: string, least: string, most: string, count: number) =>
      `hours ${from} to ${to}, ${least} to ${most}, ${count} steps`,
    gap: 'not read for too long',
    base: 'base',
    highest: 'warmest: sets the class',
    result: 'together',
    caution: 'Degree-hours speak of Staphylococcus aureus only.',
  },
  caution: 'Degree-hours speak of Staphylococcus aureus only. Local codes and licensed practice come first.',
};
