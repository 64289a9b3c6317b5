import { type Said, said, strong } from '#words/said.ts';

export const chambers = {
  title: 'Chambers',
  none: said(
    'No chamber yet. ',
    strong('Add the place where your sausage dries'),
    ', even if it is a cupboard.',
  ),
  sentence: (count: number): Said =>
    said(count === 1 ? 'One chamber, read today.' : `${count} chambers, all read today.`),
  stale: (name: string, ago: string, others: number): Said =>
    said(
      strong(name),
      ` was last read ${ago}`,
      others === 0
        ? '.'
        : others === 1
          ? '; another one is not read today either.'
          : `; ${others} others are not read today either.`,
    ),
  unread: (name: string): Said => said(strong(`Read the air of ${name}`), ': nothing is known of it yet.'),
  add: 'Add a chamber',
  addTitle: 'Add a chamber',
  changeTitle: 'Change the chamber',
  name: 'Name',
  nameHint: 'Cellar, old fridge, drying room …',
  rails: 'Rails',
  railsHint: 'How many rods or shelves pieces can hang from.',
  railsWhole: 'These come in whole numbers.',
  places: 'Places on a rail',
  placesHint:
    'How many pieces hang from one without touching. May stay empty; with it the calendar sees a clash.',
  save: 'Save',
  correctReason: 'renamed or rebuilt',
  notRead: 'not read yet',
  hanging: (batches: number) => (batches === 1 ? 'one batch hangs in it' : `${batches} batches hang in it`),
  empty: 'empty',

  one: {
    read: (n: { temp: string; rh: string | null; when: string }): Said =>
      said(strong(n.rh === null ? n.temp : `${n.temp} and ${n.rh}`), ` at ${n.when}.`),
    readOld: (n: { temp: string; rh: string | null; ago: string }): Said =>
      said(
        `${n.rh === null ? n.temp : `${n.temp} and ${n.rh}`}, but that was ${n.ago}. `,
        strong('Read the air again'),
        '.',
      ),
    unread: said(strong('Read the air'), ': a thermometer and a hygrometer, at the height of the pieces.'),
    /** How the last reading differs from what was set; nothing where it does not. */
    against: (parts: readonly string[]): Said =>
      parts.length === 0 ? [] : said(` It is ${parts.join(' and ')}.`),
    warmer: (by: string) => `${by} warmer than set`,
    colder: (by: string) => `${by} colder than set`,
    moister: (by: string) => `${by} moister than set`,
    drier: (by: string) => `${by} drier than set`,
    points: (points: string) => `${points} points`,
    temperature: 'Temperature',
    humidity: 'Humidity',
    setTo: (value: string) => `set to ${value}`,
    dewPoint: 'Dew point',
    dewPointNote: 'colder things grow wet',
    deficit: 'Room for water',
    deficitNote: 'vapour pressure deficit',
    wetBulb: 'Wet skin',
    wetBulbNote: 'fresh pieces are about so cold',
    readAct: 'Read the air',
    setAct: 'Set the air',
    readTitle: 'Read the air',
    setTitle: 'Set the air',
    setHint: 'What the controller is set to from now on.',
    temperatureLabel: 'Air temperature',
    humidityLabel: 'Relative humidity',
    humidityHint: 'May stay empty if there is no hygrometer.',
    extremes: {
      title: 'Least and most it kept',
      hint: 'Of an instrument that keeps them: since it was reset at the reading before. Reset it after.',
      low: 'Coolest',
      high: 'Warmest',
      lowRh: 'Driest',
      highRh: 'Dampest',
    },
    between: (least: string, most: string) => `between ${least} and ${most} since the reading before`,
    notLower: 'The least cannot lie above what it shows now.',
    notHigher: 'The most cannot lie below what it shows now.',
    instrument: 'Read with',
    noInstrument: 'not said',
    save: 'Save',
    chart: 'The last readings',
    chartLabel: (n: { count: number; from: string; to: string }) =>
      `Air temperature of ${n.count} readings, from ${n.from} to ${n.to}.`,
    humidityChart: 'Humidity',
    humidityChartLabel: (n: { count: number; from: string; to: string }) =>
      `Relative humidity of ${n.count} readings, from ${n.from} to ${n.to}.`,
    drawing: 'Drawing',
    failed: 'Could not be drawn; the numbers are below.',
    table: 'The numbers',
    when: 'When',
    setLine: (value: string) => `set to ${value}`,
    hanging: 'Hangs in it',
    hangingNone: 'Nothing hangs in it.',
    readings: 'Readings',
    readingsNone: 'No reading yet.',
    strike: 'Strike it',
    strikeTitle: 'Strike this reading',
    strikeText: 'It stays in the record as struck, and counts no longer.',
    reason: 'Why',
    reasonNeeded: 'Say why in a word or two.',
    countsAs: (air: string) => `counts as ${air}`,
    file: (name: string, count: string) => `${name}: ${count} readings`,
    older: (count: number) => `Show ${count} older ones`,
    lastWas: (air: string, ago: string) => `last: ${air}, ${ago}`,
    change: 'Name and rails',
    caution:
      'A hygrometer can be far out. Check it over wet table salt in a closed jar: it should settle at about 75 %.',
  },

  question: {
    swapped: (temp: string, rh: string) => `${temp} and ${rh}: could the two be swapped?`,
    hot: (temp: string) => `${temp} is warm for a drying chamber. Is that what it showed?`,
    cold: (temp: string) => `${temp} is below freezing. Is that what it showed?`,
    dry: (rh: string) => `${rh} is very dry. Is that what it showed?`,
    jump: (now: string, before: string, ago: string) =>
      `${now}, and ${before} ${ago}. Is that what it showed?`,
  },

  working: {
    dewPoint: {
      title: 'Dew point',
      equation:
        'saturation pressure at the dew point = humidity × saturation pressure at the air temperature',
    },
    deficit: {
      title: 'Vapour pressure deficit',
      equation: 'saturation pressure at the air temperature × (100 % − humidity)',
    },
    wetBulb: {
      title: 'Wet skin',
      equation:
        'heat that the air brings to a wet surface = heat that its water takes away; solved for the temperature of the surface, at sea level',
    },
    air: 'air temperature',
    humidity: 'relative humidity',
    saturation: 'saturation pressure',
    vapour: 'pressure of the water in the air',
    caution: 'Worked out from one reading of two instruments. Two points of humidity shift it noticeably.',
  },
};
