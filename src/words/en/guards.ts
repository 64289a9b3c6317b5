import type { Formula } from '#core/formula/formula.ts';
import type { Guard, GuardCode } from '#core/formula/guards.ts';
import { decimal, type Writing } from '#words/format.ts';

type Facts = { readonly name: string; readonly value: string; readonly level: string };

const sentences: Readonly<Record<GuardCode, (facts: Facts) => string>> = {
  'no-cure': () =>
    'No curing salt: nothing here holds back Clostridium botulinum but salt, acid and drying. Ask somebody who knows this product.',
  'cure-without-label': ({ name }) =>
    `${name} has no percentages: type what its bag prints before it is weighed. A name says nothing.`,
  'label-like-a-fraction': ({ name, value }) =>
    `${name} is said to hold ${value} % nitrite. That looks like a fraction: 0.0625 is written on no bag, 6.25 % is.`,
  'nearly-pure-agent': ({ name, value }) =>
    `${name} is said to hold ${value} % nitrite and nitrate. Nearly pure, a few grams of it kill: it is not weighed at a bench.`,
  'ten-times-over': () =>
    'More than ten times a limit: a unit was mistaken somewhere. Look at the amounts and at the bag.',
  'pumped-limit-on-mix': ({ value, level }) =>
    `${value} mg/kg nitrite is the limit for meat pumped with brine; a mix has ${level}.`,
  'muscle-limit-on-mix': ({ value, level }) =>
    `${value} mg/kg nitrite would do for a dry-cured whole muscle; a mix has ${level}.`,
  'two-cures': ({ value }) =>
    `Two curing salts add up, to ${value} mg/kg nitrite. Is one of them meant instead of the other?`,
  'nitrite-alone-for-long': ({ value, level }) =>
    `${value} days are planned with nitrite alone. Beyond about ${level} days makers use a curing salt with nitrate as well, which lasts where nitrite is used up.`,
  'nitrate-alone': () =>
    'Nitrate alone turns into nitrite only slowly, and not at all in a mix that sours fast: the first weeks are without it.',
  'little-nitrite': ({ value, level }) =>
    `${value} mg/kg nitrite is under ${level}, the least that is said to hold anything back.`,
  'little-salt': ({ value, level }) =>
    `${value} % salt in all is under ${level} %, which makers call the bare minimum for a sausage that is dried.`,
  'much-salt': ({ value }) => `${value} % salt in all is more than any recipe that was read.`,
  'no-starter': () =>
    'No starter culture: the mix may sour late or not at all, and what grows instead is left to chance.',
  game: () =>
    'Game can carry Trichinella that freezing does not kill. Only meat that was tested, or cooking, rules it out.',
  'belly-has-its-own-limit': () =>
    'If the piece is belly (bacon), the United States set a lower limit than the one shown here.',
};

/** Small shares keep their digits; milligrams and days need none. */
function figure(value: number | null, writing: Pick<Writing, 'decimal'>): string {
  if (value === null) return '';
  return decimal(value, value < 1 ? 4 : value < 10 ? 2 : 0, writing);
}

/** What a careful colleague would ask before anything is weighed: one plain sentence each. */
export const guards = {
  text: (
    { code, lineId, value, level }: Guard,
    { lines }: Formula,
    writing: Pick<Writing, 'decimal'>,
  ): string =>
    sentences[code]({
      name: lines.find(({ id }) => id === lineId)?.name ?? '',
      value: figure(value, writing),
      level: figure(level, writing),
    }),
};
