/** Drying sums that take too long for the thread that draws: tasks and answers, plain enough to be handed to another. */

import type { WindowScore } from '#core/drying/window-score.ts';
import { type PlanAhead, type PlanGiven, planAhead } from './drying-ahead.ts';
import { type BatchAhead, type BatchGiven, batchAhead } from './drying-batch.ts';
import { type Rehearsal, type RehearsalGiven, rehearse } from './drying-rehearsal.ts';
import { type FinishedIn, ownScore } from './drying-score.ts';

export type DryingTask =
  | { readonly sum: 'batch'; readonly given: BatchGiven }
  | { readonly sum: 'plan'; readonly given: PlanGiven }
  | { readonly sum: 'score'; readonly given: readonly FinishedIn[] }
  | { readonly sum: 'rehearsal'; readonly given: RehearsalGiven };

export type DryingAnswer<T extends DryingTask> = T extends { sum: 'batch' }
  ? BatchAhead | null
  : T extends { sum: 'score' }
    ? WindowScore | null
    : T extends { sum: 'plan' }
      ? PlanAhead
      : Rehearsal;

export function dryingSum(task: DryingTask): BatchAhead | PlanAhead | WindowScore | Rehearsal | null {
  switch (task.sum) {
    case 'batch':
      return batchAhead(task.given);
    case 'plan':
      return planAhead(task.given);
    case 'score':
      return ownScore(task.given);
    case 'rehearsal':
      return rehearse(task.given);
  }
}
