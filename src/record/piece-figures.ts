import { gramsToGoG, lossPct, targetG } from '#core/drying/loss.ts';
import type { Piece, Weighing } from './piece.ts';

/** What a piece's weights come to. `last` null: not weighed since it was stuffed, so its loss is not known. */
export type PieceFigures = {
  readonly targetG: number;
  readonly last: Weighing | null;
  readonly lossPct: number | null;
  readonly gramsToGoG: number | null;
  readonly atTarget: boolean;
};

export function pieceFigures(piece: Piece): PieceFigures {
  const { greenG, targetLossPct } = piece;
  const last = piece.weighings.filter(({ netG }) => netG > 0).at(-1) ?? null;
  const toGoG = last && gramsToGoG({ greenG, nowG: last.netG, targetLossPct });
  return {
    targetG: targetG({ greenG, targetLossPct }),
    last,
    lossPct: last && lossPct({ greenG, nowG: last.netG }),
    gramsToGoG: toGoG,
    atTarget: toGoG !== null && toGoG <= 0,
  };
}
