import { type Said, said, strong } from '#words/said.ts';

const what = {
  lean: 'Lean meat',
  fat: 'Fat',
  cure: 'Curing salt',
  culture: 'Starter culture',
  mould: 'Mould culture',
  salt: 'Salt',
  sugar: 'Sugar',
  spice: 'Spice',
  casing: 'Casing',
  other: 'Other',
} as const;

export const received = {
  title: 'What came in',
  none: said(
    'Nothing received yet. ',
    strong('Enter the curing salt first'),
    ': by what is printed on its bag.',
  ),
  sentence: (n: { lots: number; cures: number }): Said => {
    const lots = n.lots === 1 ? 'One lot' : `${n.lots} lots`;
    return n.cures === 0
      ? said(`${lots}. `, strong('No curing salt among them.'))
      : said(`${lots}, the newest first. Each keeps its number to the last slice.`);
  },
  what,
  receive: 'Receive',
  receiveCure: 'The curing salt',
  somethingElse: 'Something else',
  older: (count: number) => `Show ${count} older ones`,
  lot: (lot: string) => `lot ${lot}`,
  noLot: 'no lot number',
  from: (supplier: string) => `from ${supplier}`,
  nitrite: (pct: string) => `${pct} nitrite`,
  nitrate: (pct: string) => `${pct} nitrate`,
  kept: 'asked about when it was typed, and kept',

  form: {
    title: 'Receive',
    correctTitle: 'Correct what was received',
    sentence: said(
      'What the label says, and ',
      strong('its lot number'),
      ': that is how a batch is traced back.',
    ),
    cureSentence: said(
      'Type the percentages ',
      strong('printed on the bag'),
      '. The name of a curing salt says nothing: two of one name can differ tenfold.',
    ),
    what: 'What came in?',
    name: 'Name',
    nameHint: 'As it says on the label.',
    supplier: 'Supplier',
    lot: 'Their lot number',
    lotHint: 'From the label. Leave it empty if there is none.',
    when: 'Received',
    temperature: 'Temperature on receipt',
    temperatureHint: 'Measured in the meat or between packs.',
    massUnit: 'Weight is in',
    cureCaution:
      'Too much nitrite is poisonous, too little leaves botulism unguarded. Keep the bag marked and out of the reach of children.',
    mass: 'Weight',
    massHint: 'May stay empty.',
    species: 'Meat of',
    speciesOptions: {
      pork: 'pork',
      beef: 'beef',
      lamb: 'lamb',
      horse: 'horse',
      poultry: 'poultry',
      'wild-boar': 'wild boar',
      venison: 'venison',
      bear: 'bear',
      other: 'other',
    } as Readonly<Record<string, string>>,
    gameNotice:
      'Game: freezing cannot be relied on against Trichinella. Have it examined, and ask the local authority.',
    packed: 'Packed or killed on',
    bestBefore: 'Best before',
    storage: 'Kept',
    storages: { frozen: 'in the freezer', 'out-of-freezer': 'out of the freezer' },
    opened: 'Pack opened on',
    openedHint: 'Leave it empty while the pack is sealed. Its age shows at the weigh-out.',
    nitrite: 'Nitrite',
    nitriteHint: 'Percent, as printed. 0 if the bag names none.',
    nitriteSalt: 'Which nitrite?',
    nitrate: 'Nitrate',
    nitrateHint: 'Percent, as printed. 0 if the bag names none.',
    nitrateSalt: 'Which nitrate?',
    salts: {
      NaNO2: { label: 'Sodium nitrite', note: 'NaNO2, E 250' },
      KNO2: { label: 'Potassium nitrite', note: 'KNO2, E 249' },
      NaNO3: { label: 'Sodium nitrate', note: 'NaNO3, E 251' },
      KNO3: { label: 'Potassium nitrate', note: 'KNO3, E 252' },
    },
    together: 'Nitrite and nitrate together cannot be more than 100 %.',
    note: 'Note',
    reason: 'Why is it corrected?',
    reasonHint: 'Misread, mistyped, found on the invoice …',
    save: 'Save',
    empty: 'Empty the form',
    optional: 'May stay empty.',
    whatNeeded: 'Choose what came in.',
    nameNeeded: 'Give it a name, so that it can be found at the bench.',
    reasonNeeded: 'Say why in a word or two; the old values stay visible beside it.',
  },

  question: {
    fraction: (typed: string, meant: string) =>
      `${typed} % nitrite? That looks like a share of one. If the bag says ${meant} %, type ${meant}.`,
    tenfold: (typed: string, meant: string) =>
      `${typed} % nitrite? If the bag says ${meant} %, the decimal sign has slipped.`,
    pure: (typed: string) =>
      `${typed} % nitrite is nearly pure. A pinch of it is a dangerous dose. Is that really what the bag says?`,
    unusual: (typed: string, ranges: string) =>
      `${typed} % nitrite is unusual: bags seen hold ${ranges}. Is that what is printed on yours?`,
    none: 'Neither nitrite nor nitrate? Then it is plain salt, and guards against nothing. Is that what the bag says?',
    nitrateOnly:
      'Nitrate without nitrite works only once bacteria have turned it, slowly and unevenly. Is that what the bag says?',
    nitrateHigh: (typed: string) =>
      `${typed} % nitrate is much for a curing salt. Is that what is printed on the bag?`,
    range: (from: string, to: string) => `${from} to ${to} %`,
    warm: (temp: string) =>
      `Received at ${temp}? That is warm for fresh meat. Is it what the thermometer showed?`,
  },

  detail: {
    received: 'Received',
    supplier: 'Supplier',
    lot: 'Their lot number',
    by: 'Entered by',
    temperature: 'Temperature on receipt',
    mass: 'Weight',
    species: 'Meat of',
    packed: 'Packed or killed on',
    bestBefore: 'Best before',
    nitrite: 'Nitrite, by the bag',
    nitrate: 'Nitrate, by the bag',
    opened: 'Pack opened on',
    storage: 'Kept',
    note: 'Note',
    notGiven: 'not given',
    asked: 'Unlikely value',
    lateEntry: (written: string) => `entered ${written}`,
    correct: 'Correct it',
    history: 'Before it was corrected',
    struckBecause: (reason: string) => `struck: ${reason}`,
    usedIn: 'Used in',
    notUsed: 'In no batch yet.',
    struckWhole: 'This lot was struck. It is not offered at the bench any more.',
    rivals: 'This was corrected twice, apart from each other. Look at both, and correct it once more.',
  },
};
