import { type Said, said, strong } from '#words/said.ts';

/** "one scale", "3 scales". */
function some(count: number, one: string, many: string): string {
  return count === 0 ? `no ${one}` : count === 1 ? `one ${one}` : `${count} ${many}`;
}

const masses = { metric: 'grams', pounds: 'pounds and ounces' } as const;

export const kit = {
  title: 'Kit',
  toKit: 'Kit',
  notSetUp: said(
    strong('Set up the bench'),
    ' first: units and the rule set. Nothing is judged without one.',
  ),
  setUp: 'Set up the bench',
  stands: (n: {
    mass: 'metric' | 'pounds';
    degrees: string;
    ruleSet: string | null;
    scales: number;
    meters: number;
    lots: number;
    onlyHere: number;
  }): Said => {
    const units = `Weighed in ${masses[n.mass]}, read in ${n.degrees}, `;
    const things = ` ${some(n.scales, 'scale', 'scales')}, ${some(n.meters, 'meter', 'meters')} and ${some(n.lots, 'lot', 'lots')} received. `;
    const Things = things.replace(/[a-z0-9]/, (first) => first.toUpperCase());
    const rules = n.ruleSet === null ? strong('no rule set chosen.') : `by the rules of ${n.ruleSet}.`;
    return n.onlyHere === 0
      ? said(units, rules, Things, 'All of it is in a backup.')
      : said(units, rules, Things, strong(`${some(n.onlyHere, 'entry', 'entries')} on this phone only`), '.');
  },
  rows: {
    bench: 'Bench',
    scales: 'Scales and meters',
    checks: 'Checks of scales and meters',
    received: 'What came in',
    keeping: 'Backup and other phones',
    limits: 'Where the numbers come from',
    hazards: 'Hazards, in plain words',
  },
  benchNote: (n: { units: string; paper: string; ruleSet: string | null }) =>
    [n.units, n.paper, n.ruleSet ?? 'no rule set chosen'].join(' · '),
  checksNote: 'buffers, ice, wet salt, a check weight',
  scalesNone: 'none yet: the curing salt needs a fine one',
  receivedNone: 'nothing yet',
  receivedLast: (name: string, when: string) => `last: ${name}, ${when}`,
  keepingNone: 'never backed up',
  keepingLast: (ago: string) => `backed up ${ago}`,
  onlyHere: (count: number) => `${some(count, 'entry', 'entries')} on this phone only`,
  limitsNote: 'every limit, its source and its standing',
  hazardsNote: 'what can go wrong, and why',
  build: (id: string) => `Build ${id}`,

  bench: {
    title: 'Set up the bench',
    first: said(
      'Chosen once, before the first batch. ',
      strong('The rule set'),
      ' decides what is a deviation.',
    ),
    again: said(
      'A batch keeps ',
      strong('the rules of the day it was opened'),
      '; a change here is for the next.',
    ),
    mass: 'Weights',
    masses: {
      metric: { label: 'Grams', note: 'g and kg' },
      pounds: { label: 'Pounds', note: 'lb and oz' },
    },
    temperature: 'Temperatures',
    decimal: 'Decimal sign',
    decimals: { '.': { label: 'Point', note: '2.5' }, ',': { label: 'Comma', note: '2,5' } },
    paper: 'Paper',
    initials: 'Initials',
    initialsHint: 'Stand beside every entry. May stay empty.',
    ruleSet: 'Rule set',
    ruleSetHint: 'The one that holds where you make it. None is chosen for you.',
    never: 'never compared with the official text',
    comparedOn: (day: string) => `compared with the official text on ${day}`,
    nitriteMost: (limit: string) => `nitrite ${limit}`,
    degreeHours: (limits: string) => `fewer than ${limits}`,
    degreeHoursBorrowed: 'no degree-hours of its own',
    known: (memory: boolean) => (memory ? 'known from copies, in part from memory' : 'known from copies'),
    toLimits: 'All that each rule set holds',
    choose: 'Choose a rule set. Without one, nothing can be held against a limit.',
    chooseMass: 'Choose how you weigh.',
    chooseTemperature: 'Choose how you read temperatures.',
    save: 'Save',
    saveFirst: 'Save, then the scale',
  },

  scales: {
    title: 'Scales and meters',
    none: said(
      strong('Add the scale'),
      ' that you weigh the curing salt on: its step decides how exact that is.',
    ),
    sentence: (finest: string): Said => said('The finest scale reads in ', strong(finest), '.'),
    dose: 'Least curing salt it weighs well',
    doseNote: (pct: string) => `within ${pct} of what is weighed`,
    doseTitle: 'Least dose on the finest scale',
    doseEquation: '(half a step at the reading + half a step at the tare) ÷ how near it should be',
    doseStep: 'step of the scale',
    doseNear: 'how near curing salt should be weighed',
    doseSource: 'Bench tolerance and rounding of a display',
    doseCaution: 'A scale that is out of adjustment is worse than its step. Check it with a known weight.',
    scales: 'Scales',
    meters: 'Meters',
    noMeters:
      'No meter yet. pH meter, thermometer and hygrometer are named here, so that a reading says what it was read with.',
    step: (step: string) => `reads in ${step}`,
    most: (most: string) => `up to ${most}`,
    meterName: { 'ph-meter': 'pH meter', thermometer: 'Thermometer', hygrometer: 'Hygrometer' },
    stepUnit: 'Unit of the step',
    add: 'Add',
    addScale: 'Add a scale',
    addMeter: 'Add a meter',
    name: 'Name',
    nameHint: 'As you call it at the bench.',
    nameOfScale: (step: string) => `${step} scale`,
    stepLabel: 'It reads in steps of',
    stepHint: 'The smallest change that its display can show.',
    otherStep: 'another step',
    stepTyped: 'Step',
    mostLabel: 'Most that it carries',
    mostHint: 'Printed on it, often as “max”. May stay empty.',
    stepAboveMost: 'The step cannot be larger than the most that it carries.',
    what: 'What is it?',
    whatNeeded: 'Choose what it is.',
    stepNeeded: 'Choose the step that its display shows.',
    nameNeeded: 'Give it a name.',
    save: 'Save',
    strike: 'Strike it',
    strikeText: 'It is no longer offered. What was weighed or read with it stays in the record.',
    reason: 'Why',
    reasonHint: 'Broken, sold, entered twice …',
    why: {
      broken: 'broken',
      gone: 'not here any more',
      mistake: 'entered by mistake',
      other: 'another reason',
    },
    reasonNeeded: 'Say why in a word or two.',
    toChecks: 'Checks',
    toChecksNote: 'buffers, melting ice, wet salt, a known weight',
    toToday: 'To Today',
  },
};
