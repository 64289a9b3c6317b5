import { type Said, said, strong } from '#words/said.ts';
import { dates } from './dates.ts';

const units: Readonly<Record<string, string>> = {
  'degree-hours F': 'degree-hours (°F)',
  'degree-hours C': 'degree-hours (°C)',
  '%-points RH': 'points of humidity',
  C: '°C',
  F: '°F',
};

/** What a limit counts on, where workings have no words for it. */
const bases: Readonly<Record<string, string>> = {
  'meat-temperature': 'measured in the meat',
  'offset-at-ph-7': 'shown in a buffer of pH 7',
  'slope-of-nernst': 'of the theoretical slope',
  'shown-in-buffer': 'against the value of the buffer',
  'melting-ice': 'away from 0 °C in melting ice',
  'wet-salt': 'away from 75 % over wet table salt',
  'check-weight': 'away from the check weight, one step of the scale',
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
  'degree-hours-end': 'Degree-hours are counted until',
  'degree-hours': 'Degree-hours until pH 5.3',
};

export const limits = {
  title: 'Where the numbers come from',
  sentence: (count: number, compared: number): Said =>
    compared === 0
      ? said(
          `${count} limits of three rule sets. `,
          strong('None was compared with the official text'),
          ' by a person yet; each says how it came to be known.',
        )
      : said(
          `${count} limits of three rule sets, `,
          strong(compared === 1 ? 'one of them compared' : `${compared} of them compared`),
          ' with the official text; each limit says how it came to be known.',
        ),
  inForce: 'in force here',
  count: (count: number) => `${count} limits.`,
  never: 'Never compared with the official text.',
  comparedOn: (day: string) => `Compared with the official text on ${day}.`,
  /** A calendar day of a rule set, such as `2025-10-09`. */
  day: (day: string): string => dates.fullDay(Date.parse(day), '+00:00'),
  appliesFrom: (day: string) => `Applies from ${day}.`,
  borrowed:
    'This rule set has no degree-hours of its own; the Canadian ones are shown for reference and make no verdict of their own.',
  laboratory: 'What only a laboratory can answer',
  formula: 'What goes in',
  fermenting: 'While it is warm',
  unit: (code: string): string => units[code] ?? code,
  basis: (code: string): string | undefined => bases[code],
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
  freezing: {
    title: 'Freezing pork against Trichinella',
    reserved: 'The federal text that held these tables stands empty since 2018. Not for game.',
    borrowed:
      'The Canadian table could not be read. The one of the United States is shown for reference and makes no verdict here. Not for game.',
    room: 'In a freezer of a known temperature',
    core: 'With a probe in the warmest part',
    thin: (to: string) => `pieces or layers up to ${to}`,
    thick: (from: string, to: string) => `pieces or layers over ${from}, up to ${to}`,
    row: (temp: string, time: string) => `${temp} or colder: ${time}`,
    days: (days: string) => `at least ${days} days`,
    hours: (hours: string) => `at least ${hours} h`,
    inRoom: 'by the temperature of the freezer, counted once the meat itself is that cold',
    inCore: 'by the temperature in the core',
  },
  practice: {
    title: 'Beside the rule sets',
    instruments: 'Instruments',
    meter: {
      offsetLow: 'pH meter: offset, lowest',
      offsetHigh: 'pH meter: offset, highest',
      slopeLow: 'pH meter: slope, lowest',
      slopeHigh: 'pH meter: slope, highest',
      error: 'pH meter: error of a shown pH',
    },
    ice: 'Thermometer in melting ice',
    wetSalt: 'Hygrometer over wet salt',
    cold: 'Cold at the bench',
    coldNote: 'Common practice; none of these is a published limit, and no verdict rests on one.',
    stage: {
      received: 'Meat on receipt',
      'lean-before-grinding': 'Lean before grinding',
      'fat-before-grinding': 'Fat before grinding',
      'after-grinding': 'Mince after grinding',
      'after-mixing': 'Mix before stuffing',
    },
    go: 'go on',
    stop: 'stop and chill above',
  },
  conflicts: {
    title: 'Where sources disagree',
    sentence: said(
      'Both are shown. Where a verdict rests on one of them, ',
      strong('the one less favourable to the maker counts'),
      '.',
    ),
    topics: {
      tie: 'A sum of degree-hours that is exactly the limit',
      base: 'From where Canadian degree-hours are counted',
      euDay: 'First day of the lower nitrite limits in the European Union',
      staphAw: 'Least water activity at which Staphylococcus aureus grows',
      genoa: 'Most moisture to one part of protein in Genoa salami',
      secondCure: 'Nitrate in curing salts that share one name',
    },
    tieText: 'the text says fewer than the limit: passed',
    tieTable: (temp: string, hours: string) => `a printed table allows ${hours} at ${temp}: held`,
    baseText: (temp: string) => `the text counts from ${temp}`,
    baseTable: (temp: string) => `the printed hours fit ${temp} better, and are shorter`,
    used: 'used here',
  },
  toHazards: 'Hazards, in plain words',
};
