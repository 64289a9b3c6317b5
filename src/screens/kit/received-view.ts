import type { Lot, Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, massUnit } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type LotRow = {
  readonly key: string;
  readonly href: string;
  readonly title: string;
  readonly note: string;
  readonly figure: { readonly figure: string; readonly unit: string; readonly figureNote?: string } | null;
};

export type ReceivedView = { readonly sentence: Said; readonly rows: readonly LotRow[] };

/** What was received, newest first. A curing salt shows what its bag says, all else its weight. */
export function receivedView({
  lots,
  place,
  nowMs,
  zone,
  words,
}: {
  lots: readonly Lot[];
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
}): ReceivedView {
  const say = words.received;
  const rows = [...lots]
    .sort((a, b) => b.received.atMs - a.received.atMs || (a.id < b.id ? 1 : -1))
    .map(({ id, received: { body, atMs } }) => ({
      key: id,
      href: `#/kit/received/${id.slice('lot:'.length)}`,
      title: body.name,
      note: [
        say.what[body.what],
        body.lot === '' ? say.noLot : say.lot(body.lot),
        ...(body.supplier === '' ? [] : [say.from(body.supplier)]),
        words.dates.near(atMs, nowMs, zone),
      ].join(' · '),
      figure: figureOf(body, place, words),
    }));
  return {
    sentence:
      lots.length === 0
        ? say.none
        : say.sentence({
            lots: lots.length,
            cures: lots.filter(({ received }) => received.body.cure).length,
          }),
    rows,
  };
}

function figureOf(body: Lot['received']['body'], place: Place, words: Words): LotRow['figure'] {
  if (body.cure) {
    const { nitritePct, nitratePct } = body.cure;
    const pct = (value: number) => joined({ value: words.workings.exactly(value, place), unit: '%' });
    return {
      figure: words.workings.exactly(nitritePct, place),
      unit: '%',
      figureNote:
        nitratePct > 0
          ? `${words.received.form.nitrite.toLowerCase()}, ${words.received.nitrate(pct(nitratePct))}`
          : words.received.form.nitrite.toLowerCase(),
    };
  }
  if (body.massG === undefined) return null;
  return massFigure(body.massG, place);
}

/** A received mass in kilograms or pounds where it is large: nobody reads 12 000 g of pork. */
export function massFigure(massG: number, place: Place): { figure: string; unit: string } {
  if (place.mass === 'metric' && massG >= 1000)
    return { figure: String(Number((massG / 1000).toFixed(3))).replace('.', place.decimal), unit: 'kg' };
  if (place.mass === 'metric') return { figure: decimal(massG, massG < 10 ? 1 : 0, place), unit: 'g' };
  const { value } = mass(massG, massUnit(massG, place) === 'lb' ? 10 : 1, place);
  return { figure: value, unit: massUnit(massG, place) };
}
