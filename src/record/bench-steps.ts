import type { Batch } from './batch.ts';
import type { BenchStep } from './kinds.ts';

/** What is written down at the bench, in order. A whole muscle is neither ground nor mixed: it is cased when the salt is through. */
export function benchSteps({ opened }: Pick<Batch, 'opened'>): readonly BenchStep[] {
  return opened.body.formula.kind === 'comminuted'
    ? ['cleaned', 'ground', 'mixed', 'stuffed']
    : ['cleaned', 'stuffed'];
}
