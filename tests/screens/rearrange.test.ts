import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Place, shifted } from '#screens/hanging/rearrange.ts';

const order: Place[] = [
  { piece: 'piece:a', rail: 1 },
  { piece: 'piece:b', rail: 1 },
  { piece: 'piece:c', rail: 2 },
];
const text = (places: readonly Place[]) =>
  places.map(({ piece, rail }) => `${rail}${piece.slice(6)}`).join(' ');

describe('a piece moved by a tap', () => {
  it('changes places with its neighbour, and goes on to the next rail past the end', () => {
    expect(text(shifted(order, 'piece:b', -1, 2))).toBe('1b 1a 2c');
    expect(text(shifted(order, 'piece:b', 1, 2))).toBe('1a 2b 2c');
    expect(text(shifted(order, 'piece:c', -1, 2))).toBe('1a 1b 1c');
  });

  it('stays at the ends of the chamber', () => {
    expect(text(shifted(order, 'piece:a', -1, 2))).toBe(text(order));
    expect(text(shifted(order, 'piece:c', 1, 2))).toBe(text(order));
  });

  it('there and back hangs where it hung, and no piece is ever lost', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(2), fc.boolean()), { maxLength: 30 }), (taps) => {
        const pieces = ['piece:a', 'piece:b', 'piece:c'] as const;
        let now: Place[] = order;
        for (const [at, down] of taps) {
          const piece = pieces[at] ?? 'piece:a';
          const next = shifted(now, piece, down ? 1 : -1, 2);
          if (text(next) !== text(now)) expect(text(shifted(next, piece, down ? -1 : 1, 2))).toBe(text(now));
          now = next;
        }
        expect(new Set(now.map(({ piece }) => piece)).size).toBe(3);
        expect([...now].sort((a, b) => a.rail - b.rail).map(({ rail }) => rail)).toEqual(
          now.map(({ rail }) => rail),
        );
      }),
    );
  });
});
