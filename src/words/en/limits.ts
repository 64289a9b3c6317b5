import { type Said, said, strong } from '../said.ts';

const units: Readonly<Record<string, string>> = {
  'degree-hours F': 'degree-hours (°F)',
  'degree-hours C': 'degree-hours (°C)',
  C: '°C',
  F: '°F',
};

/** What each rule of the rule sets is about, by its code. */
const rules: Readonly<Record<string, string>> = {
  'nitrite-in-most': 'Most nitrite that goes in',
  'nitrate-in-most': 'Most nitrate that goes in',
  'nitrite-in-least': 'Least nitrite that goes in',
  'cure-in-most': 'Most nitrite and nitrate that go in',
  'cure-in-least': 'Least nitrite and nitrate that go in',
  'salt-in-least': 'Least salt',
  'nitrite-left-most': 'Most nitrite left over',
  'nitrate-left-most': 'Most nitrate left over',
  'degree-hours-base': 'Degree-hours are counted above',
  'degree-hours': 'Degree-hours until pH 5.3',
};

export const limits = {
  title: 'Where the numbers come from',
  sentence: (count: number): Said =>
    said(
      `${count} limits stand in this app. `,
      strong('None was compared with the official text'),
      ' by a person yet; each says how it came to be known.',
    ),
  sentenceCompared: (count: number, compared: number): Said =>
    said(
      `${count} limits stand in this app. Of three rule sets `,
      strong(compared === 1 ? 'one was compared' : `${compared} were compared`),
      ' with the official text; each limit says how it came to be known.',
    ),
  inForce: 'in force here',
  never: 'Never compared with the official text.',
  comparedOn: (day: string) => `Compared with the official text on ${day}.`,
  appliesFrom: (day: string) => `Applies from ${day}.`,
  borrowed:
    'This rule set has no degree-hours of its own; the Canadian ones are shown for reference and make no verdict of their own.',
  laboratory: 'What only a laboratory can answer',
  formula: 'What goes in',
  fermenting: 'While it is warm',
  unit: (code: string): string => units[code] ?? code,
  rule: (code: string): string => rules[code] ?? code.replaceAll('-', ' '),
  kinds: {
    comminuted: 'ground sausage',
    'whole-muscle': 'whole muscle',
    both: 'ground sausage and whole muscle',
  },
  classes: {
    below: (to: string) => `room below ${to}`,
    between: (from: string, to: string) => `room from ${from} to ${to}`,
    above: (from: string) => `room above ${from}`,
  },
  conflicts: {
    title: 'Where sources disagree',
    sentence: said(
      'Both are shown. ',
      strong('The less favourable one counts'),
      ' wherever a verdict rests on it.',
    ),
    topics: {
      staphAw: 'Least water activity at which Staphylococcus aureus grows',
      mpr: 'Most moisture to protein in Genoa salami',
      euDay: 'First day of the lower nitrite limits in the European Union',
      hours: 'Degree-hours against the printed hours',
      secondCure: 'Nitrate in curing salts sold under one and the same name',
    },
    counted: {
      hoursTable: 'the printed tables allow exactly the limit, in hours at one temperature',
      hoursText: 'the text says fewer than the limit',
      euEarly: 'nine trade services',
      euLate: 'two trade pages, counting from entry into force',
    },
  },
  toHazards: 'Hazards, in plain words',
};
