import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SubjectId } from '#record/subject.ts';
import { pieceAddress, readCode, scannedPiece, tagCode } from '#record/tag-code.ts';

const piece = fc.uuid().map((id): SubjectId => `piece:${id}`);

describe('a tag', () => {
  it('leads back to its piece, wherever the app lay when it was printed', () => {
    fc.assert(
      fc.property(piece, fc.webUrl(), (id, app) => {
        expect(scannedPiece(pieceAddress(id, app))).toBe(id);
        expect(scannedPiece(pieceAddress(id, `${app}#/batches/x/tags`))).toBe(id);
      }),
    );
  });

  it('bears six signs that may be typed in any way', () => {
    fc.assert(
      fc.property(piece, (id) => {
        const code = tagCode(id);
        expect(readCode(` ${code.slice(0, 3).toLowerCase()}-${code.slice(3)} `)).toBe(code);
      }),
    );
  });

  it('is not any other text', () => {
    for (const text of ['', '12', 'GGGGGG', '1234567']) expect(readCode(text)).toBeNull();
    for (const text of ['https://elsewhere.example/', '#/pieces/1', 'WIFI:S:cellar;;'])
      expect(scannedPiece(text)).toBeNull();
  });
});
