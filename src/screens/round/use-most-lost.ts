import { useEffect, useRef } from 'react';
import type { Batch } from '#record/batch.ts';
import type { Piece } from '#record/piece.ts';
import { mostLostPct } from './round-view.ts';

/** While the piece is still on its way to the scale. */
const SETTLED_MS = 150;

/** A forecast takes an old phone a tenth of a second: made before it is asked for, so that no save waits for it. */
export function useMostLostPct(piece: Piece, batch: Batch, nowMs: number): () => number {
  const made = useRef<{ readonly piece: Piece; readonly mostPct: number } | null>(null);
  const make = () => {
    if (made.current?.piece !== piece) made.current = { piece, mostPct: mostLostPct(piece, batch, nowMs) };
    return made.current.mostPct;
  };
  const latest = useRef(make);
  latest.current = make;
  useEffect(() => {
    const timer = setTimeout(() => latest.current(), SETTLED_MS);
    return () => clearTimeout(timer);
  }, []);
  return make;
}
