import { DEGREE_HOUR_RULES } from '#core/rules/degree-hours.ts';
import type { Source, Standing } from '#core/rules/rule.ts';
import { RULE_SETS } from '#core/rules/rule-sets.ts';
import { EU_2023_2108 } from '#core/rules/sources.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';

type Says = { readonly text: string; readonly source: Source; readonly used: boolean };
export type Conflict = { readonly topic: string; readonly says: readonly Says[] };

const source = (body: string, title: string, section: string, standing: Standing): Source => ({
  body,
  title,
  section,
  standing,
});

const LOG_2012 = source(
  'University fermentation log',
  'form of 23 November 2012',
  'hours at one temperature',
  'read',
);
const HOURS_TABLE = source(
  'CFIA',
  'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
  '4.16.2.1, hours at one temperature; one row from a pH meter vendor, the others from memory',
  'memory-high',
);
const TRADE_LATE = source(
  'Trade pages',
  'Regulation (EU) 2023/2108',
  'first day, as two of them count it',
  'read-second-hand',
);
const ARS = source(
  'USDA ARS',
  'limits for growth of pathogens',
  'as printed in a university extension sheet',
  'read-second-hand',
);
const FDA = source('FDA', 'Bad Bug Book, factors affecting growth', 'table of water activity', 'read');
const EXTENSION_1999 = source(
  'University extension sheet',
  'moisture to protein of sausages (1999)',
  'Genoa salami',
  'read',
);
const POLICY_BOOK = source(
  'USDA FSIS',
  'Food Standards and Labeling Policy Book',
  'Genoa salami',
  'memory-high',
);
const FORUMS = source('Makers’ forums', 'labels quoted by buyers', 'two threads', 'read-second-hand');

/** Published values that contradict each other, each with what this app goes by. */
export function conflicts(words: Words, place: Place): readonly Conflict[] {
  const { conflicts: say } = words.limits;
  const temp = (tempC: number, places: number) => joined(temperature(tempC, place, places));
  const pct = (value: number, places: number) => joined({ value: decimal(value, places, place), unit: '%' });
  const { CA, US } = DEGREE_HOUR_RULES;
  const usText = US.classes[0]?.limit.source ?? US.base.source;
  return [
    {
      topic: say.topics.tie,
      says: [
        { text: say.tieText, source: usText, used: true },
        {
          text: say.tieTable(joined({ value: '75', unit: '°F' }), joined({ value: '80', unit: 'h' })),
          source: LOG_2012,
          used: false,
        },
      ],
    },
    {
      topic: say.topics.base,
      says: [
        { text: say.baseText(temp(CA.base.value, 1)), source: CA.base.source, used: true },
        { text: say.baseTable(temp(CA.cautiousBaseDeg, 2)), source: HOURS_TABLE, used: false },
      ],
    },
    {
      topic: say.topics.euDay,
      says: [
        { text: words.limits.day(RULE_SETS.EU.appliesFrom ?? ''), source: EU_2023_2108, used: true },
        { text: words.limits.day('2025-10-29'), source: TRADE_LATE, used: false },
      ],
    },
    {
      topic: say.topics.staphAw,
      says: [
        { text: decimal(0.83, 2, place), source: ARS, used: false },
        { text: decimal(0.86, 2, place), source: FDA, used: false },
      ],
    },
    {
      topic: say.topics.genoa,
      says: [
        { text: `${decimal(2.1, 1, place)} : 1`, source: EXTENSION_1999, used: false },
        { text: `${decimal(2.3, 1, place)} : 1`, source: POLICY_BOOK, used: false },
      ],
    },
    {
      topic: say.topics.secondCure,
      says: [{ text: [pct(1, 0), pct(3.63, 2), pct(4, 0)].join(', '), source: FORUMS, used: false }],
    },
  ];
}
