import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { filledShare, pieceBoxes, pieceOutline, pieceTies, SLOT } from '#ui/drawings/piece-shape.ts';

const size = fc.record({
  diameterMm: fc.integer({ min: 18, max: 120 }),
  lengthMm: fc.integer({ min: 120, max: 900 }),
});
const sizes = fc.array(size, { minLength: 1, maxLength: 24 });
const numbersIn = (path: string) => (path.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);

describe('pieces on a rail', () => {
  it('keep the proportion of their calibres', () => {
    const [thin, thick] = pieceBoxes([
      { diameterMm: 40, lengthMm: 300 },
      { diameterMm: 80, lengthMm: 300 },
    ]);
    expect(thick?.width).toBeCloseTo(2 * (thin?.width ?? 0), 9);
    expect(thick?.height).toBeCloseTo(thin?.height ?? 0, 9);
  });

  it('a piece that is not too long for the picture keeps its own proportion', () => {
    const [box] = pieceBoxes([{ diameterMm: 60, lengthMm: 150 }]);
    expect((box?.height ?? 0) / (box?.width ?? 1)).toBeCloseTo(150 / 60, 9);
  });

  it('fit into their place, whatever hangs there, and stay longer than wide', () => {
    fc.assert(
      fc.property(sizes, (all) => {
        for (const { width, height } of pieceBoxes(all)) {
          expect(width).toBeLessThanOrEqual(SLOT.width);
          expect(height).toBeLessThanOrEqual(SLOT.maxLength + 1e-9);
          expect(height).toBeGreaterThan(width);
        }
      }),
    );
  });

  it('a longer piece is never drawn shorter than another of its calibre', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 20, max: 100 }), (all, diameterMm) => {
        const alike = all.map(({ lengthMm }) => ({ diameterMm, lengthMm }));
        const drawn = pieceBoxes(alike).map(({ height }, at) => ({
          height,
          lengthMm: alike[at]?.lengthMm ?? 0,
        }));
        const heights = drawn.sort((a, b) => a.lengthMm - b.lengthMm).map(({ height }) => height);
        expect(heights).toEqual(heights.toSorted((a, b) => a - b));
      }),
    );
  });

  it('an outline is closed, holds only numbers, and stays in its box', () => {
    fc.assert(
      fc.property(size, (piece) => {
        const [box = { width: 0, height: 0 }] = pieceBoxes([piece]);
        const outline = pieceOutline(box);
        expect(outline).toMatch(/^M[\d .CHZ-]+Z$/);
        for (const at of numbersIn(outline)) {
          expect(at).toBeGreaterThanOrEqual(0);
          expect(at).toBeLessThanOrEqual(Math.max(box.width, box.height) + 0.01);
        }
      }),
    );
  });

  it('an outline is the same on both sides', () => {
    const points = numbersIn(pieceOutline({ width: 40, height: 120 }).replace(/H\S+?(?=C)/, ''));
    const xs = points.filter((_, at) => at % 2 === 0);
    expect(Math.min(...xs) + Math.max(...xs)).toBeCloseTo(40, 1);
  });

  it('longer pieces get more turns of string', () => {
    const turns = (height: number) => pieceTies({ width: 40, height }).split('M').length - 1;
    expect([turns(30), turns(92), turns(138)]).toEqual([1, 2, 3]);
  });
});

describe('the red in a piece', () => {
  it.each([
    [0, 0.38, 0],
    [0.19, 0.38, 0.5],
    [0.38, 0.38, 1],
    [0.45, 0.38, 1], // past the target a piece is full
    [-0.01, 0.38, 0], // heavier than green weight: drawn empty, said in words
  ])('at a loss of %d towards %d it fills %d', (lossFraction, targetFraction, share) => {
    expect(filledShare({ lossFraction, targetFraction })).toBeCloseTo(share, 9);
  });
});
