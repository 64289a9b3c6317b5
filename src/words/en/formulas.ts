/** Words of the screens of formulas (long: all of one screen stand together). */
import { type Said, said, strong, type Token } from '#words/said.ts';

/** What is known of nitrite, nitrate and salt against the rule set. Figures and limits come with their unit. */
export type CureSaid =
  | { readonly case: 'no-meat' | 'no-pieces' | 'no-room' | 'no-cure' | 'no-label' }
  | { readonly case: 'no-rule-set'; readonly figure: string }
  | { readonly case: 'no-limit'; readonly figure: string }
  | {
      readonly case: 'keeps' | 'over' | 'under';
      readonly what: string;
      readonly figure: string;
      readonly limit: string;
    };

/** What the scale in use does to the curing salt. */
export type ScaleSaid =
  | { readonly case: 'fine' }
  | { readonly case: 'coarse'; readonly scale: string; readonly from: string; readonly to: string }
  | { readonly case: 'edge'; readonly massText: string };

function cureTokens(cure: CureSaid): (string | Token)[] {
  switch (cure.case) {
    case 'no-meat':
      return ['Type the ', strong('lean and fat on the bench'), '; every line is scaled from them.'];
    case 'no-pieces':
      return ['Type ', strong('how many pieces'), ' there will be; one line is counted by the piece.'];
    case 'no-room':
      return ['The percentages of total leave no room for meat: ', strong('edit the formula'), '.'];
    case 'no-cure':
      return [strong('No curing salt'), ' is in this formula, so no nitrite goes in.'];
    case 'no-label':
      return [
        'How much nitrite goes in is ',
        strong('not known'),
        ': type what is printed on the bag of curing salt.',
      ];
    case 'no-rule-set':
      return [
        `Nitrite goes in at ${cure.figure} of meat. No limit is held against it yet: `,
        strong('choose a rule set'),
        ' in Kit.',
      ];
    case 'no-limit':
      return [`Nitrite goes in at ${cure.figure} of meat.`];
    case 'keeps':
      return [`${cure.what}: `, strong(cure.figure), ` of meat; the limit is ${cure.limit}.`];
    case 'over':
      return [
        `${cure.what}: `,
        strong(cure.figure),
        ` of meat, over the limit of ${cure.limit}: `,
        strong('take less curing salt'),
        '.',
      ];
    case 'under':
      return [`${cure.what}: `, strong(cure.figure), `, under the least of ${cure.limit}.`];
  }
}

function scaleTokens(scale: ScaleSaid): (string | Token)[] {
  switch (scale.case) {
    case 'fine':
      return [];
    case 'coarse':
      return [
        ` On this scale (${scale.scale}) it could be anything from ${scale.from} to ${scale.to}: weigh the curing salt on a `,
        strong('finer scale'),
        '.',
      ];
    case 'edge':
      return [
        " The scales' steps alone could carry it past the limit: ",
        strong(`weigh ${scale.massText}`),
        ' to stay under it.',
      ];
  }
}

export const formulas = {
  title: 'Formulas',
  none: said(
    'No formula yet. ',
    strong('Take the starting formula'),
    ' and make it yours, or begin an empty one.',
  ),
  sentence: (count: number): Said =>
    said(strong(count === 1 ? 'One formula' : `${count} formulas`), ', every saved version kept.'),
  versions: (count: number): string => (count === 1 ? 'one version' : `${count} versions`),
  lastSaved: (day: string): string => `last saved ${day}`,
  begin: 'Begin an empty one',
  beginAnother: 'New formula',
  takeStarting: 'Take the starting formula',
  starting: {
    heading: 'Starting formula',
    text: 'Invented for this app, made by nobody yet: a beginning to change, not a tried product. Its figures are common practice of the trade.',
    note: 'Invented starting formula, taken as it is.',
  },
  unreadable: 'A newer version of the app wrote this formula. Update the app to read it.',

  version: (number: number, count: number): string =>
    number === count ? `version ${number}` : `version ${number} of ${count}`,
  saved: (day: string): string => `saved ${day}`,
  madeElsewhere: 'made from a formula that is not in this book',
  madeFrom: (name: string, version: number): string => `made from ${name}, version ${version}`,

  cure: (cure: CureSaid, scale: ScaleSaid): Said => said(...cureTokens(cure), ...scaleTokens(scale)),

  bench: 'Meat on the bench',
  lean: 'Lean, trimmed',
  fat: 'Fat, trimmed',
  muscle: 'Piece, trimmed',
  pieces: 'Pieces',
  fatIs: (pct: string, wanted: string): string => `${pct} % fat in the meat; the formula wants ${wanted} %`,
  otherWays: 'Other ways to scale',

  lines: (meat: string): string => `For ${meat} of meat`,
  linesNoMeat: 'Lines',
  mix: (mass: string): string => `The whole mix is ${mass}.`,
  noScale: 'No scale is entered in Kit: rounded as a kitchen scale in whole grams would show it.',
  kitchenScale: 'whole grams',
  addScale: 'Enter your scale',
  shownAs: 'Amounts shown as',
  base: {
    written: 'as written',
    'pct-of-meat': '% of meat',
    'pct-of-total': '% of total',
    'g-per-kg-meat': 'g/kg of meat',
  },
  amount: {
    'pct-of-meat': (pct: string): string => `${pct}\u00a0% of meat`,
    'pct-of-lean': (pct: string): string => `${pct}\u00a0% of lean`,
    'pct-of-total': (pct: string): string => `${pct}\u00a0% of total`,
    'g-per-kg-meat': (dose: string): string => `${dose}\u00a0g/kg of meat`,
    fixed: (mass: string): string => `${mass} whatever the batch`,
    'at-least': (dose: string, least: string): string => `${dose}\u00a0g/kg of meat, at least ${least}`,
    'per-piece': (mass: string): string => `${mass} a piece`,
    'pack-share': (share: string, pack: string, dose: string): string =>
      `${dose}\u00a0g/kg of meat, at least ${share}\u00a0% of a ${pack} pack`,
  },
  label: (nitrite: string, nitrate: string | null): string =>
    nitrate === null ? `${nitrite}\u00a0% nitrite` : `${nitrite}\u00a0% nitrite, ${nitrate}\u00a0% nitrate`,
  noLabel: 'bag percentages missing',
  rounding: { nearest: '', down: 'rounded down', up: 'rounded up' },
  off: (pct: string): string => `±\u00a0${pct}\u00a0%`,
  offNitrite: (nitrite: string): string => `±\u00a0${nitrite}\u00a0mg/kg nitrite by the step`,
  portions: (count: number): string => `in ${count} portions`,
  why: {
    'per-kg': 'here by weight of meat',
    'pack-share': 'here the share of the pack is more',
    minimum: 'here the least is more',
  },

  figures: {
    totalSalt: 'total salt',
    leastSalt: 'salt, at the least',
    saltUnknown: 'of meat; how much the curing salt brings is not known',
    saltNote: (cureSalt: string): string => `of meat; ${cureSalt} comes with the curing salt`,
    slice: 'salt in the slice',
    sliceNote: (loss: string): string => `at ${loss} % loss`,
    nitrite: 'nitrite, mg/kg',
    nitriteNote: (ion: string): string => `of meat; ${ion} as ion`,
    ofMeat: 'of meat',
  },
  bagDays: (from: string, to: string): string =>
    `Makers keep such a piece ${from} to ${to} days in the bag; no rule by weight or thickness was agreed.`,

  findings: 'Against the rule set',
  ruleSet: (name: string, comparedOn: string | null): string =>
    comparedOn === null
      ? `Rule set: ${name}; its figures were never compared with the official text. A plan stays pending until it is weighed.`
      : `Rule set: ${name}; its figures were compared with the official text on ${comparedOn}. A plan stays pending until it is weighed.`,
  chooseRuleSet: 'choose a rule set',
  toRuleSet: 'Choose a rule set',
  finding: (verdict: string, about: string): string => `${verdict}: ${about}`,
  about: {
    'nitrite-in-most': 'most nitrite',
    'nitrite-in-least': 'least nitrite',
    'nitrate-in-most': 'most nitrate',
    'cure-in-most': 'most nitrite and nitrate',
    'cure-in-least': 'least nitrite and nitrate',
    'salt-in-least': 'least salt',
  },
  missing: {
    'weighed-grams': '',
    'cure-label': 'the percentages on the bag are missing',
    'cure-grams': 'the curing salt is not weighed',
    'salt-grams': 'the salt is not weighed',
    'line-grams': 'a line is not weighed',
    'scale-step': 'the scale is not known',
    'finer-scale': 'it takes a finer scale',
  },
  measure: {
    nitrite: 'Nitrite',
    nitrate: 'Nitrate',
    'nitrite-and-nitrate': 'Nitrite and nitrate together',
    'nitrite-ion': 'Nitrite, counted as ion,',
    'nitrate-ion': 'Nitrate, counted as ion,',
    'salt-of-mix': 'Salt',
  },

  working: {
    title: {
      'nitrite-in-most': 'The most nitrite that may go in',
      'nitrite-in-least': 'The least nitrite that goes in',
      'nitrate-in-most': 'The most nitrate that may go in',
      'cure-in-most': 'The most nitrite and nitrate that may go in',
      'cure-in-least': 'The least nitrite and nitrate that go in',
      'salt-in-least': 'The least salt that goes in',
    },
    equation: {
      nitrite: 'curing salt × nitrite printed on the bag ÷ green weight of meat',
      nitrate: 'curing salt × nitrate printed on the bag ÷ green weight of meat',
      'nitrite-and-nitrate': 'curing salt × (nitrite + nitrate printed on the bag) ÷ green weight of meat',
      'nitrite-ion': 'curing salt × nitrite printed on the bag ÷ green weight of meat × share of the ion',
      'nitrate-ion': 'curing salt × nitrate printed on the bag ÷ green weight of meat × share of the ion',
      'salt-of-mix': '(salt + salt inside the curing salt) ÷ whole mix',
      'salt-of-meat': '(salt + salt inside the curing salt) ÷ meat',
      slice: '(salt + salt inside the curing salt) ÷ (whole mix × (1 − loss))',
    },
    meat: 'Meat, green weight',
    mix: 'Whole mix',
    cureGrams: 'as weighed out for your scale',
    nitriteOnBag: 'Nitrite printed on the bag',
    nitrateOnBag: 'Nitrate printed on the bag',
    salt: 'Salt',
    saltInCure: 'Salt inside the curing salt',
    saltInCureNote: 'what the label leaves',
    ionShare: 'Share of the ion in the salt',
    ionNote: 'by the factors published with the limit',
    loss: 'Weight loss aimed at',
    ends: "At the ends of the scales' steps",
    endsText: (from: string, to: string): string => `${from} to ${to}`,
    unrounded: 'Before rounding to the scale',
    massBalance: 'Mass balance',
    massBalanceSection: 'salt, curing salt and mix as weighed out',
    sliceSection: 'only water leaves; nothing else is lost',
    planned: 'These are planned grams. A plan is never within a limit; the weighed grams decide.',
    estimate: 'An estimate from the plan, not a measurement. No verdict rests on it.',
    deviation:
      'Over the limit: lower the curing salt in the formula, and ask the local authority before such a mix is used.',
    under: 'Under the least that the text asks for: ask the local authority before such a mix is used.',
  },

  premix: {
    text: (says: { part: string; carrier: string; use: string; rest: string; off: string }): string =>
      `No finer scale? Stir ${says.part} evenly into ${says.carrier}, weigh ${says.use} of that and ${says.rest} by itself: the step then leaves ${says.off}\u00a0% open.`,
    left: {
      cure: 'Label what is left over and keep it locked away.',
      starter: 'Label what is left over with the day and freeze it.',
      other: 'Label what is left over.',
    },
  },
  guards: 'Look at this first',
  cautions: 'Before you weigh',
  usual: [
    'Weigh curing salt, never spoon it. Nitrite holds back Clostridium botulinum; too much of it poisons.',
    'Do not lower salt, curing salt or starter to taste. Spices are yours to change.',
  ],
  open: 'Open a batch',
  edit: 'Edit',
  copy: 'Copy as a new formula',
  copyName: (name: string): string => `${name}, copy`,
  copyNote: (name: string, version: number): string => `Copied from ${name}, version ${version}.`,
  note: 'Note',

  history: {
    heading: 'Versions',
    row: (number: number, day: string): string => `Version ${number}, ${day}`,
    by: (initials: string): string => `by ${initials}`,
    noNote: 'no note',
    show: 'Show',
    shown: 'shown',
    compare: 'Compare two side by side',
    list: 'Back to the list',
    left: 'Left',
    right: 'Right',
    same: said('No difference between these two.'),
    days: 'days',
    differ: (count: number): Said =>
      said(strong(count === 1 ? 'One difference' : `${count} differences`), ' between these two.'),
    added: 'added',
    removed: 'left out',
    changed: 'changed',
    unchanged: 'the same',
    absent: '–',
    newer: (number: number): string => `There is a newer version: ${number}.`,
    toNewest: 'Show the newest',
    field: {
      name: 'Name',
      kind: 'Kind',
      species: 'Species',
      fatPctOfMeat: 'Fat in the meat',
      diameterMm: 'Diameter',
      pieceG: 'Piece',
      targetLossPct: 'Target loss',
      plannedDays: 'Planned days',
      note: 'Note',
    },
    lineField: {
      name: 'name',
      amount: 'amount',
      role: 'kind of line',
      cure: 'label',
      sugarKind: 'sugar',
      hiddenSugarPct: 'hidden sugar',
      sulphiteMgPerKg: 'sulphite',
      allergens: 'allergens',
      cutNdb: 'cut',
      ownFatPct: 'fat of the cut',
      note: 'note',
    },
  },
  kind: { comminuted: 'minced and stuffed', 'whole-muscle': 'whole muscle' },
  species: {
    pork: 'pork',
    beef: 'beef',
    lamb: 'lamb',
    horse: 'horse',
    poultry: 'poultry',
    'wild-boar': 'wild boar',
    venison: 'venison',
    bear: 'bear',
    other: 'other',
  },
  role: {
    lean: 'lean',
    fat: 'fat',
    salt: 'salt',
    cure: 'curing salt',
    sugar: 'sugar',
    starter: 'starter',
    spice: 'spice',
    liquid: 'liquid',
    mould: 'mould for the casing',
    other: 'other',
  },
};
