/** What stands on a tag, and back from it to its piece. */
import type { SubjectId } from './subject.ts';

const SIGNS = 6;

/** The short code on a tag: the last signs of the piece's id, which are its random part. */
export function tagCode(piece: SubjectId): string {
  return piece.slice(-SIGNS).toUpperCase();
}

/** The address that a tag's code holds: the app where it was printed, and the piece. */
export function pieceAddress(piece: SubjectId, appAddress: string): string {
  return `${appAddress.replace(/#.*$/, '')}#/pieces/${piece.slice('piece:'.length)}`;
}

/** The id in a scanned address, wherever the app lies; null for any other text. */
export function scannedPiece(text: string): SubjectId | null {
  const found = /#\/pieces\/([0-9a-f-]{36})$/.exec(text.trim());
  return found?.[1] ? `piece:${found[1]}` : null;
}

/** What was typed as a code, without the spaces; null where it cannot be one. */
export function readCode(typed: string): string | null {
  const code = typed.replace(/[\s-]/g, '').toUpperCase();
  return /^[0-9A-F]{6}$/.test(code) ? code : null;
}
