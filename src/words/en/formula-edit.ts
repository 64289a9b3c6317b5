import type { AmountProblem } from '#core/formula/typed-amount.ts';
import { type Said, said, strong } from '#words/said.ts';

export const formulaEdit = {
  titleNew: 'New formula',
  title: 'Edit',
  sentence: {
    first: said(
      'Give it a name and its lines. ',
      strong('Meat is 100\u00a0%'),
      '; every line says what it counts on.',
    ),
    next: (number: number): Said =>
      said('Saving adds ', strong(`version ${number}`), '; the versions before it stay as they are.'),
  },
  name: 'Name',
  kind: 'What it becomes',
  species: 'Meat of',
  fatPctOfMeat: 'Fat wanted in the meat',
  diameterMm: 'Diameter at stuffing',
  targetLossPct: 'Weight loss aimed at',
  plannedDays: 'From stuffing to the end',
  usual: {
    fatPctOfMeat: 'usually 10 to 30 %',
    diameterMm: 'usually 32 to 110 mm',
    targetLossPct: 'usually 30 to 45 %',
    plannedDays: 'weeks for thin pieces, months for thick ones',
  },
  days: 'days',
  plan: 'Kind, species, diameter, loss, days, note',
  note: 'Note on the formula',
  versionNote: 'What changed, and why',
  versionHint: 'Stands beside this version in the list.',
  save: (number: number): string => (number === 1 ? 'Save' : `Save as version ${number}`),
  restored: 'What you were typing is still here.',
  startOver: 'Start over',
  lines: 'Lines',
  sums: (salt: string, nitrite: string | null): string =>
    nitrite === null
      ? `Total salt ${salt}\u00a0% of meat.`
      : `Total salt ${salt}\u00a0% of meat; nitrite ${nitrite}\u00a0mg/kg of meat.`,
  linesHint: 'Press a line to change it.',
  incomplete: 'not complete',
  add: 'Add a line',
  addTitle: 'What kind of line?',
  role: {
    lean: 'Lean meat',
    fat: 'Fat',
    salt: 'Salt',
    cure: 'Curing salt',
    sugar: 'Sugar',
    starter: 'Starter culture',
    spice: 'Spice or herb',
    liquid: 'Wine or water',
    mould: 'Mould for the casing',
    other: 'Something else',
  },

  line: {
    name: 'Name',
    role: 'Kind of line',
    otherBase: 'Count it on something else, or type it as a recipe prints it',
    basis: 'Counted on',
    basisHint: 'Switching keeps the grams of a batch with 1 kg of meat.',
    basisOf: {
      'pct-of-meat': '% of meat',
      'pct-of-lean': '% of lean',
      'pct-of-total': '% of total',
      'g-per-kg-meat': 'g/kg of meat',
      fixed: 'the same in every batch',
      'at-least': 'by weight, but at least',
      'per-piece': 'by the piece',
      'pack-share': 'by the pack',
    },
    amount: {
      sharePct: 'Amount',
      doseGPerKg: 'For each kg of meat',
      massG: 'Amount',
      leastG: 'Never less than',
      packG: 'The whole pack holds',
      packPct: 'At least this share of the pack',
    },
    optional: 'may stay empty',
    meatShare: 'How this meat shares the lean, or the fat, with the others of its kind.',
    totalSalt: 'All salt together',
    totalSaltHint: 'With the salt inside the curing salt, of meat. Typing here sets the amount above.',
    totalSaltOver: 'The curing salt alone brings more than this, or a line is not complete.',
    recipe: 'As a recipe prints it',
    recipeHint: 'Such as “5 % of total” or “1.5 oz for 10 lb”.',
    recipeRead: (amount: string): string => `Read as ${amount}.`,
    recipeAssumed: (amount: string): string => `Read as ${amount}; “per kg” was taken as per kg of meat.`,
    recipeProblem: {
      empty: '',
      'not-understood': 'This was not understood. Type an amount and what it counts on.',
      'unit-missing': 'Which unit? Type % of meat, g/kg, g, oz or lb behind it.',
      'percent-of-what': 'Percent of what? Type “% of meat”, “% of lean” or “% of total”.',
      'over-100-percent': 'This is more than the whole.',
      'agent-not-cure':
        'This is an amount of nitrite or nitrate, not of a curing salt. Type the curing salt by weight and what its bag prints.',
      spoons: 'Two sets of spoons differ by a quarter. Weigh a spoonful and type the grams.',
      volume: 'Type the weight; a volume of one thing weighs more than of another.',
      'ambiguous-number': 'This number could be read in two ways. Type it without a sign between thousands.',
    } satisfies Record<AmountProblem, string>,
    label: 'Printed on the bag',
    labelHint:
      'The name of a curing salt says nothing: bags of one name hold 0.5 to 6.25 %. Type what yours prints.',
    nitritePct: 'Nitrite',
    nitratePct: 'Nitrate',
    nitrateHint: '0 if the bag prints none',
    nitriteSalt: 'Nitrite as',
    nitrateSalt: 'Nitrate as',
    salt: {
      NaNO2: 'sodium nitrite',
      KNO2: 'potassium nitrite',
      NaNO3: 'sodium nitrate',
      KNO3: 'potassium nitrate',
    },
    overBag: 'Nitrite and nitrate together are more than the bag.',
    whichSalt: 'Sodium or potassium',
    cut: 'Which cut',
    cutHint:
      'For what the mix is made of, by a published table of raw pork. Fat that was measured goes before it.',
    usualCut: { lean: 'not named: leg, loin and shoulder', fat: 'not named: back fat' },
    cutNote: (ndb: string, fat: string): string => `NDB ${ndb}, ${fat} % fat`,
    ownFatPct: 'Fat in it, if measured',
    noLabel: 'Without these percentages nobody can say how much nitrite goes in.',
    fraction: (typed: string, meant: string): string =>
      `${typed} % looks like a fraction: no bag that was read prints less than 0.4 %. If it prints ${meant} %, type ${meant}.`,
    pure: 'This is nearly pure nitrite. A few grams of it kill. It is not for use outside a plant that dilutes it under control.',
    sugarKind: 'Which sugar',
    sugar: {
      dextrose: 'dextrose',
      sucrose: 'sucrose',
      lactose: 'lactose',
      fructose: 'fructose',
      maltodextrin: 'maltodextrin',
      honey: 'honey',
      other: 'other',
    },
    hiddenSugarPct: 'Sugar hidden in it',
    hiddenSugarHint: 'Wine, must and paprika bring sugar that ferments too.',
    sulphite: 'Sulphite in it, as printed',
    allergens: 'Allergens in it',
    note: 'Note',
    more: 'More about this line',
    earlier: 'Move up',
    later: 'Move down',
    remove: 'Leave it out',
    done: 'Done',
  },
  /** Unlikely, not impossible: asked about once. */
  unlikely: {
    salt: (name: string, amount: string): string =>
      `${name} at ${amount}: more than 4 % salt is unusual for a dry sausage. Is that what you mean?`,
    bag: (name: string, label: string): string =>
      `${name} is said to print ${label}. Is that what stands on the bag?`,
    much: (name: string, amount: string): string =>
      `${name} at ${amount} is far more than usual. Is that what you mean?`,
  },
  whole: {
    'no-lines': 'A formula needs at least one line.',
    'too-many-lines': 'More than 60 lines cannot be kept.',
    'no-room': 'The percentages of total come to 100 % or more; nothing is left for the meat.',
  },
  doubt: {
    fatLines: (lines: string, wanted: string): string =>
      `The lines of fat come to ${lines}\u00a0% of meat, the formula wants ${wanted}\u00a0%. The bench decides; the lines only say what the fat is made of.`,
    meatLines: (lines: string): string =>
      `The lines of lean and fat come to ${lines}\u00a0% instead of 100\u00a0%. They share what lies on the bench in that proportion.`,
  },
  lookAt: (count: number): string =>
    count === 1 ? 'One line is not complete.' : `${count} lines are not complete.`,
  changed: 'Somebody saved another version meanwhile. Yours is added after it.',
};
