import { lossPct } from '#core/drying/loss.ts';
import type { EntryId } from '#record/entry.ts';
import type { Piece } from '#record/piece.ts';
import type { PieceWindow } from '#record/piece-ahead.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import type { Said } from '#words/said.ts';

type Given = {
  piece: Piece;
  forecast: PieceWindow | null;
  /** True while another thread works the forecast out. */
  working: boolean;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};

export type PieceView = {
  readonly sentence: Said;
  readonly lossFraction: number | null;
  readonly figures: readonly { key: string; label: string; value: string; unit: string }[];
  readonly weighings: readonly { key: EntryId; title: string; note: string; figure: string; unit: string }[];
};

export function pieceView(given: Given): PieceView {
  const { piece, place, nowMs, words } = given;
  const { figures } = words.piece;
  const { last, targetG, lossPct: lost } = pieceFigures(piece);
  return {
    sentence: sentenceOf(given),
    lossFraction: lost === null ? null : Math.max(0, lost / 100),
    figures: [
      { key: 'green', label: figures.green, ...mass(piece.greenG, 1, place) },
      ...(last
        ? [
            {
              key: 'last',
              label: figures.last(words.dates.ago(last.atMs, nowMs)),
              ...mass(last.netG, 1, place),
            },
          ]
        : []),
      { key: 'target', label: figures.target, ...mass(targetG, 1, place, 'down') },
      { key: 'diameter', label: figures.diameter, value: decimal(piece.diameterMm, 0, place), unit: 'mm' },
    ],
    weighings: [...piece.weighings].reverse().map(({ entry, atMs, netG, stage }) => {
      const { value, unit } = mass(netG, 1, place);
      return {
        key: entry,
        title: words.dates.full(atMs, piece.stuffed.zone),
        note: [
          words.piece.stage[stage],
          netG > 0
            ? `${decimal(lossPct({ greenG: piece.greenG, nowG: netG }), 1, place, 'down')}\u00a0%`
            : '',
        ]
          .filter(Boolean)
          .join(', '),
        figure: value,
        unit,
      };
    }),
  };
}

function sentenceOf({ piece, forecast, working, place, nowMs, zone, words }: Given): Said {
  const { sentence } = words.piece;
  const { lossPct: lost, gramsToGoG, atTarget } = pieceFigures(piece);
  if (piece.status === 'taken-down') return sentence.down;
  if (piece.status === 'bagged') return sentence.bagged;
  if (lost === null || gramsToGoG === null) return sentence.unweighed;
  const loss = `${decimal(lost, 1, place, 'down')}\u00a0%`;
  if (atTarget) return sentence.atTarget(loss);
  const toGo = joined(mass(gramsToGoG, 1, place, 'up'));
  if (forecast === null) return working ? sentence.working(loss, toGo) : sentence.toGo(loss, toGo, null);
  return sentence.toGo(loss, toGo, words.hanging.window(forecast, { nowMs, zone }));
}
