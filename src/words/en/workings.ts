import type { Limit, Source } from '#core/rules/rule.ts';
import { decimal, type Writing } from '#words/format.ts';
import { verdicts } from './verdicts.ts';

const basisWords: Readonly<Record<string, string>> = {
  'green-meat': 'on the weight of the meat before drying',
  'green-meat-as-ion': 'as ion, on the weight of the meat before drying',
  'total-mix': 'on the weight of the whole mix',
  'finished-product': 'in the finished product',
  'room-temperature': 'by the temperature of the room, until pH 5.3',
  sausage: 'in the sausage',
};

/** As many places as the number has, so that 156.25 is not shown as 156.3. */
function exactly(value: number, writing: Pick<Writing, 'decimal'>): string {
  const places = (String(value).split('.')[1] ?? '').length;
  return decimal(value, Math.min(places, 4), writing);
}

/** What every working is laid out with: the limit and the sources, each with its standing. */
export const workings = {
  words: { close: 'Close', numbers: 'Your numbers', limit: 'The limit', sources: 'Where it was published' },
  limit: (limit: Limit, writing: Pick<Writing, 'decimal'>): { label: string; value: string } => ({
    label: basisWords[limit.basis] ?? limit.basis,
    value: `${verdicts.relation(limit.relation)} ${exactly(limit.value, writing)} ${limit.unit}`,
  }),
  source: (source: Source): { text: string; standing: string } => ({
    text: verdicts.source(source),
    standing: verdicts.standing(source.standing),
  }),
  exactly,
};
