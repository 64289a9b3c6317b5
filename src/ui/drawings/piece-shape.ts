import { xy } from './round.ts';

export type PieceSize = { diameterMm: number; lengthMm: number };

export type PieceBox = { width: number; height: number };

/** The room that pieces have in the picture, in units of its view box. */
export const SLOT = { width: 60, string: 24, maxLength: 150, tail: 6 } as const;

const GIRTH = 0.78 * SLOT.width;

/**
 * Pieces of one rail in one picture: calibres in proportion to each other, lengths in proportion to each other.
 * Where a length would be too long for the picture all lengths are shortened alike; the shortest stays longer than wide.
 */
export function pieceBoxes(sizes: readonly PieceSize[]): PieceBox[] {
  const widestMm = Math.max(...sizes.map(({ diameterMm }) => diameterMm));
  const longestMm = Math.max(...sizes.map(({ lengthMm }) => lengthMm));
  const across = GIRTH / widestMm;
  const along = Math.min(across, SLOT.maxLength / longestMm);
  return sizes.map(({ diameterMm, lengthMm }) => {
    const width = diameterMm * across;
    return { width, height: Math.max(lengthMm * along, width * 1.2) };
  });
}

/** The outline of a stuffed casing from tie to tie: round shoulders, hardly a belly. Top left of its box at 0, 0. */
export function pieceOutline({ width, height }: PieceBox): string {
  const middle = width / 2;
  const shoulder = Math.min(middle * 1.15, height / 2);
  const tie = width * 0.09;
  const inset = width * 0.025;
  const right = width - inset;
  return [
    `M${xy(middle - tie, 0)}`,
    `C${xy(middle - tie * 3.2, shoulder * 0.06)} ${xy(inset, shoulder * 0.34)} ${xy(inset, shoulder)}`,
    `C${xy(0, height * 0.4)} ${xy(0, height * 0.6)} ${xy(inset, height - shoulder)}`,
    `C${xy(inset, height - shoulder * 0.34)} ${xy(middle - tie * 3.2, height - shoulder * 0.06)} ${xy(middle - tie, height)}`,
    `H${xy(middle + tie)}`,
    `C${xy(middle + tie * 3.2, height - shoulder * 0.06)} ${xy(right, height - shoulder * 0.34)} ${xy(right, height - shoulder)}`,
    `C${xy(width, height * 0.6)} ${xy(width, height * 0.4)} ${xy(right, shoulder)}`,
    `C${xy(right, shoulder * 0.34)} ${xy(middle + tie * 3.2, shoulder * 0.06)} ${xy(middle + tie, 0)}`,
    'Z',
  ].join('');
}

/** The turns of string around a piece, hanging a little in the middle. */
export function pieceTies({ width, height }: PieceBox): string {
  const turns = Math.max(1, Math.round(height / 46));
  return Array.from({ length: turns }, (_, turn) => {
    const y = (height * (turn + 1)) / (turns + 1);
    return `M0 ${xy(y)}Q${xy(width / 2, y + width * 0.16)} ${xy(width, y)}`;
  }).join('');
}

/** How far the red has risen: the share of the way to the target loss, between nothing and all of the piece. */
export function filledShare({
  lossFraction,
  targetFraction,
}: {
  lossFraction: number;
  targetFraction: number;
}): number {
  return Math.min(1, Math.max(0, lossFraction / targetFraction));
}
