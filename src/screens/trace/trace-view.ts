import type { CsvCell } from '#files/csv-text.ts';
import type { Lot, Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { type LotUse, lotsOf } from '#record/trace.ts';
import type { Words } from '#words/en.ts';
import { joined, mass } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type TraceView = {
  readonly line: string;
  readonly sentence: Said;
  readonly unreadable: boolean;
  readonly batches: readonly {
    readonly key: string;
    readonly href: string;
    readonly title: string;
    readonly opened: string;
    readonly decision: string;
    readonly uses: readonly string[];
    readonly pieces: readonly { key: string; href: string; title: string; note: string; green: string }[];
    readonly others: readonly { key: string; href: string; title: string }[];
  }[];
  /** The same as cells, one row a piece. */
  readonly cells: readonly (readonly CsvCell[])[];
};

/** Everything that a lot went into: batches, what of it in each, and every piece. */
export function traceView({
  lot,
  uses,
  lots,
  place,
  words,
}: {
  lot: SubjectId;
  uses: readonly LotUse[];
  lots: readonly Lot[];
  place: Place;
  words: Words;
}): TraceView {
  const { trace } = words;
  const received = lots.find(({ id }) => id === lot)?.received.body;
  const name = received?.name ?? '';
  const pieces = uses.flatMap(({ batch }) => batch.pieces);
  return {
    line: trace.line(name, received?.lot ?? ''),
    sentence:
      uses.length === 0
        ? trace.none
        : trace.sentence(
            uses.length,
            pieces.length,
            pieces.filter(({ status }) => status !== 'taken-down').length,
          ),
    unreadable: uses.some(({ batch }) => batch.unknown > 0),
    batches: uses.map((use) => batchOf(use, { lot, lots, place, words })),
    cells: [
      trace.columns,
      ...uses.flatMap(({ batch }) =>
        batch.pieces.map((piece) => [
          received?.lot ?? name,
          batch.opened.body.formula.name,
          batch.opened.body.lot,
          piece.number,
          piece.greenG,
          piece.status,
          batch.decided?.body.decision ?? null,
        ]),
      ),
    ],
  };
}

function batchOf(
  { batch, used }: LotUse,
  { lot, lots, place, words }: { lot: SubjectId; lots: readonly Lot[]; place: Place; words: Words },
): TraceView['batches'][number] {
  const { trace, dates } = words;
  const { formula, lot: batchLot } = batch.opened.body;
  const names = new Map(formula.lines.map(({ id, name }) => [id, name]));
  return {
    key: batch.id,
    href: `#/batches/${batch.id.slice('batch:'.length)}`,
    title: formula.name,
    opened: trace.opened(batchLot, dates.fullDay(batch.opened.atMs, batch.opened.zone)),
    decision: trace.decided[batch.decided?.body.decision ?? 'none'],
    uses: used.map(({ kind, body, atMs, zone }) =>
      trace.used(
        kind === 'weighed-out' ? (names.get(body.line) ?? body.line) : words.record.value(body.part),
        joined(mass(body.massG, kind === 'weighed-out' ? 0.01 : 1, place)),
        dates.full(atMs, zone),
      ),
    ),
    pieces: batch.pieces.map((piece) => {
      const { takenDown } = piece;
      return {
        key: piece.id,
        href: `#/pieces/${piece.id.slice('piece:'.length)}`,
        title: trace.piece(piece.number),
        note: takenDown
          ? trace.state['taken-down'](dates.fullDay(takenDown.atMs, takenDown.zone))
          : piece.status === 'bagged'
            ? trace.state.bagged
            : trace.state.hanging,
        green: joined(mass(piece.greenG, 1, place)),
      };
    }),
    others: lotsOf(batch)
      .filter((id) => id !== lot)
      .flatMap((id) => {
        const other = lots.find((each) => each.id === id)?.received.body;
        return other
          ? [
              {
                key: id,
                href: `#/lots/${id.slice('lot:'.length)}/trace`,
                title: trace.line(other.name, other.lot),
              },
            ]
          : [];
      }),
  };
}
