import { type Said, said, strong } from '#words/said.ts';

type Agent = 'nitrite' | 'nitrite-ion' | 'nitrite-and-nitrate';

const agents: Readonly<Record<Agent, string>> = {
  nitrite: 'Nitrite',
  'nitrite-ion': 'Nitrite as ion',
  'nitrite-and-nitrate': 'Nitrite and nitrate together',
};

/** What each of the three bounds of a dose comes to; a least that nobody asked for is not spoken of. */
type Doses = { perKg: string; packShare: string; minimum: string | null };

const others = (other: string, { minimum }: Doses) =>
  minimum === null ? other : `${other} and the least (${minimum})`;

export const weighOut = {
  title: 'Weigh-out',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  meatFirst: said('Weigh the ', strong('trimmed meat'), ' first; every other gram follows from it.'),
  countPieces: said(
    'One line counts by the piece: ',
    strong('stuff and number the pieces'),
    ' before it can be weighed out.',
  ),
  nitrite: {
    none: said(
      'There is no labelled cure in this formula. ',
      strong('Nothing here guards against botulism.'),
    ),
    planned: (agent: Agent, value: string, limit: string): Said =>
      said(`${agents[agent]}: `, strong(`${value} of meat`), ` will go in; the limit is ${limit}.`),
    weighed: (agent: Agent, value: string, limit: string): Said =>
      said(`${agents[agent]}: `, strong(`${value} of meat`), ` went in; the limit is ${limit}.`),
    over: (agent: Agent, value: string, limit: string): Said =>
      said(
        `${agents[agent]}: `,
        strong(`${value} of meat, over the limit`),
        ` of ${limit}. Do not mix it in. Weigh the cure again.`,
      ),
    low: (agent: Agent, value: string, limit: string): Said =>
      said(`${agents[agent]}: `, strong(`${value} of meat, under the least`), ` of ${limit}.`),
    scale: (low: string, high: string): Said =>
      said(
        ` On this scale it could be anything from ${low} to ${high}: `,
        strong('use a finer scale'),
        ' for the cure',
      ),
    orAtMost: (grams: string): Said => said(', or weigh ', strong(`at most ${grams}`), '.'),
    unlimited: (value: string): Said => said('Nitrite goes in at ', strong(`${value} of meat`), '.'),
  },
  rule: {
    'nitrite-in-most': 'nitrite that goes in',
    'nitrate-in-most': 'nitrate that goes in',
    'nitrite-in-least': 'least nitrite',
    'cure-in-most': 'nitrite and nitrate that go in',
    'cure-in-least': 'least nitrite and nitrate',
    'salt-in-least': 'least salt',
  } as Readonly<Record<string, string>>,
  missing: {
    'weighed-grams': 'until it is weighed',
    'cure-label': 'the label of the cure is missing',
    'cure-grams': 'the cure is not weighed',
    'salt-grams': 'the salt is not weighed',
    'line-grams': 'some lines are not weighed',
    'scale-step': 'the scale is unknown',
    'finer-scale': 'the scale is too coarse to tell',
  } as Readonly<Record<string, string>>,
  meat: {
    lean: 'Lean',
    fat: 'Fat',
    weigh: 'Weigh',
    weighed: 'weighed',
    none: 'not weighed',
    lots: (count: number) => (count === 1 ? 'one weighing' : `${count} weighings`),
  },
  base: {
    'pct-of-meat': (amount: string) => `${amount} % of meat`,
    'pct-of-lean': (amount: string) => `${amount} % of lean`,
    'pct-of-total': (amount: string) => `${amount} % of the mix`,
    'g-per-kg-meat': (amount: string) => `${amount} g per kg of meat`,
    fixed: () => 'the same in every batch',
    'at-least': (amount: string) => `at least ${amount}`,
    'per-piece': (amount: string) => `${amount} per piece`,
    'pack-share': () => 'by pack and weight, the larger',
  },
  cureLabel: (nitrite: string, nitrate: string | null) =>
    nitrate === null ? `bag: ${nitrite} % nitrite` : `bag: ${nitrite} % nitrite, ${nitrate} % nitrate`,
  starter: {
    why: {
      'per-kg': (g: Doses) =>
        `by weight of meat: more than ${others(`the share of the pack (${g.packShare})`, g)}`,
      'pack-share': (g: Doses) =>
        `the share of the pack: more than ${others(`by weight of meat (${g.perKg})`, g)}`,
      minimum: (g: Doses) =>
        `the least: more than by weight of meat (${g.perKg}) and the share of the pack (${g.packShare})`,
    },
    days: {
      'frozen-sealed': (days: number) => `sealed, in the freezer for ${days} d`,
      'frozen-opened': (days: number) => `opened ${days} d ago, in the freezer`,
      'out-of-freezer': (days: number) => `out of the freezer for ${days} d`,
    },
    expired: (age: string) => `${age}: past its date. Only the pH will tell whether it still works`,
    old: (age: string, keepsDays: number) =>
      `${age}: packs are said to keep ${keepsDays} d like that. Only the pH will tell whether it still works`,
    unknown: 'age of the pack unknown: enter when it was opened and where it is kept, under Received',
  },
  rounded: { down: 'rounded down', up: 'rounded up', nearest: '' },
  onScale: (name: string) => `on ${name}`,
  tolerance: {
    both: (mass: string) => `± ${mass}`,
    less: (mass: string) => `never more, at most ${mass} less`,
    more: (mass: string) => `never less, at most ${mass} more`,
  },
  asked: (target: string, tolerance: string) => `target ${target}, ${tolerance}`,
  outside: (target: string, tolerance: string) =>
    `target ${target}, ${tolerance}: outside it, weigh it again`,
  outsideOnes: (names: string) =>
    `Outside the tolerance of the bench: ${names}. Weigh it again, or go on with what the scale showed.`,
  step: (pct: string) => `its step leaves ± ${pct} %`,
  stepOfCure: (nitrite: string) => `± ${nitrite} mg/kg nitrite by the step`,
  noScale: 'No scale is entered: grams are rounded to 1 g. Enter the scales in Kit.',
  cost: {
    title: 'Cost',
    hint: 'What was paid for what went into this batch, in your own money. Each may stay empty.',
    meat: 'Meat, lean and fat',
    other: 'Casing and all else',
    sampled: 'Cut for samples or lost, of the finished weight',
    missing: (count: number) => `${count} without a price: the cost is at least this.`,
    measured: 'Loss as weighed.',
    planned: 'The loss is the plan’s until every piece is down.',
    total: 'In all',
    perKgMix: 'A kilo of mix',
    perKg: 'A kilo finished',
    perPiece: 'A piece',
    strikeReason: 'prices typed again',
  },
  count: {
    name: 'Count of the meat',
    trays: (trays: number, planned: number) =>
      `${trays} ${trays === 1 ? 'tray was' : 'trays were'} weighed, ${planned} ${planned === 1 ? 'was' : 'were'} planned.`,
    mass: (weighed: string, planned: string) => `${weighed} of meat were weighed, ${planned} were planned.`,
    ask: 'Count again: a tray forgotten or weighed twice makes every gram below wrong. Weigh what is missing, strike what is twice in the record, or go on with this count.',
    keep: 'This is all the meat: go on with it',
    kept: 'Kept as it is by choice.',
  },
  toGo: (left: number) => (left === 1 ? 'one line to go' : `${left} lines to go`),
  next: 'Weigh next line',
  toBench: 'To the bench',
  madeFrom: (version: number) => `The formula, version ${version}, as it was taken`,
  sheet: {
    weigh: (name: string) => `Weigh ${name}`,
    was: (quantity: string) => `was ${quantity}`,
    save: 'Save',
    asTarget: (quantity: string) => `It shows ${quantity}`,
    lot: 'Which one is in your hand?',
    noLot: 'not entered',
    typed: 'on the scale',
    unlikely: (typed: string, target: string) =>
      `The scale is said to show ${typed}, and ${target} were asked for. Is that what it shows?`,
    nothing: (typed: string) => `${typed}: nothing lies on the scale. Is that what it shows?`,
    fatShare: (typed: string, fat: string, wanted: string) =>
      `${typed}: with that, fat is ${fat} % of the meat, and the formula wants ${wanted} %. Is that what the scale shows?`,
    overScale: (typed: string, most: string) =>
      `${typed}: no scale here carries more than ${most}. Is that what it shows?`,
    overPlan: (typed: string, sum: string, part: string, wanted: string) =>
      `${typed} makes ${sum} of ${part.toLowerCase()}, and about ${wanted} were planned. Is that what the scale shows?`,
    tray: (typed: string, least: string, most: string) =>
      `${typed}: a tray of meat is mostly ${least} to ${most}. Is that what the scale shows?`,
    again: 'weighed again',
    strikeReason: 'weighed again',
    add: 'Add this weight',
    addHint: 'Each tray or lot is added to what was weighed before.',
  },
  figures: {
    salt: 'total salt',
    saltNote: 'of meat, with the salt in the cure',
    slice: 'salt in the slice',
    sliceNote: (loss: string) => `if it loses ${loss} %`,
    mix: 'whole mix',
  },
  work: {
    nitrite: {
      title: 'Nitrite that goes in',
      equation: {
        nitrite: 'grams of cure × nitrite on the bag ÷ grams of meat × 1 000 000',
        'nitrite-ion':
          'grams of cure × nitrite on the bag × share of the ion (0.67 of sodium nitrite) ÷ grams of meat × 1 000 000',
        'nitrite-and-nitrate': 'grams of cure × (nitrite + nitrate on the bag) ÷ grams of meat × 1 000 000',
      },
      meat: 'meat, lean and fat',
      label: (cure: string) => `${cure}: nitrite printed on the bag`,
      nitrateLabel: (cure: string) => `${cure}: nitrate printed on the bag`,
      result: 'goes in',
      up: 'shown rounded up',
      error: 'as far as the scale can tell',
      range: (low: string, high: string) => `${low} to ${high}`,
      caution:
        'Too much nitrite is poisonous. Too little leaves botulism unguarded. Weigh it, never spoon it.',
    },
    salt: {
      title: 'Total salt',
      equation: '(salt + salt inside the cure) ÷ meat',
      salt: 'salt',
      inCure: 'salt inside the cure',
      meat: 'meat, lean and fat',
      result: 'total salt',
    },
  },
  lines: 'Lines of the formula',
  last: {
    strike: (what: string) => `Strike the last weighing: ${what}`,
    ask: (what: string) =>
      `Strike ${what}? It stays on the record, struck through, and the line is to be weighed again.`,
    act: 'Strike it',
    reason: 'struck at the bench',
    name: 'Struck',
  },
};
