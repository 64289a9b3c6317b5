/** What a batch waits for, most consequential first. Codes and numbers; the sentence is made in `words/`. */
import { isMeat } from '#core/formula/formula.ts';
import type { Batch } from './batch.ts';
import { fermentFigures } from './ferment-figures.ts';
import { phBandOf } from './ferment-plan.ts';
import { pieceFigures } from './piece-figures.ts';
import { nextRound } from './round-rhythm.ts';

export type Due =
  | { readonly code: 'degree-hours-passed' }
  | { readonly code: 'read-room' }
  | { readonly code: 'read-ph'; readonly runsOutAtMs: number | null }
  | { readonly code: 'hang' }
  /** No ferment is planned: it goes from the salt to the drying air. */
  | { readonly code: 'hang-muscle' }
  | { readonly code: 'weigh-meat' }
  | { readonly code: 'weigh-out'; readonly left: number }
  | { readonly code: 'bench' }
  /** A whole muscle: in its bag until the salt is through, then cased. */
  | { readonly code: 'salt-through' }
  | { readonly code: 'weigh-stuffed' }
  | { readonly code: 'at-target'; readonly pieces: number }
  /** Half a day after hanging; a day after it this is over, and the daily round asks. */
  | { readonly code: 'half-day' }
  | { readonly code: 'weigh-round'; readonly lastAtMs: number | null }
  | { readonly code: 'look-through' };

/** The parts of a batch, each with a page of its own. */
export type BatchPart =
  | 'weigh-out'
  | 'bench'
  | 'stuffing'
  | 'ferment'
  | 'hanging'
  | 'round'
  | 'record'
  | 'release';

/** Most consequential first, across batches too. */
const PART_OF: Readonly<Record<Due['code'], BatchPart>> = {
  'degree-hours-passed': 'ferment',
  'read-room': 'ferment',
  'read-ph': 'ferment',
  'weigh-stuffed': 'stuffing',
  hang: 'ferment',
  'hang-muscle': 'ferment',
  bench: 'bench',
  'salt-through': 'bench',
  'weigh-out': 'weigh-out',
  'weigh-meat': 'weigh-out',
  'half-day': 'round',
  'at-target': 'hanging',
  'weigh-round': 'round',
  'look-through': 'release',
};
const ORDER = Object.keys(PART_OF);

export function partOf(due: Due): BatchPart {
  return PART_OF[due.code];
}

export function moreConsequential(a: Due, b: Due): number {
  return ORDER.indexOf(a.code) - ORDER.indexOf(b.code);
}

const HOUR_MS = 3_600_000;
/** Common practice: a pH sample every 6 to 12 h. */
export const PH_EVERY_HOURS = 12;

export function due(batch: Batch, nowMs: number): Due[] {
  switch (batch.stage) {
    case 'weigh-out':
    case 'bench':
      return atBench(batch);
    case 'ferment':
      if (phBandOf(batch.plan) === null)
        return [
          ...passed(batch, nowMs),
          { code: batch.pieces.length === 0 ? 'weigh-stuffed' : 'hang-muscle' },
        ];
      return [
        ...fermenting(batch, nowMs),
        ...(batch.pieces.length === 0 ? [{ code: 'weigh-stuffed' } as const] : []),
      ];
    case 'hanging':
      return [...passed(batch, nowMs), ...hanging(batch, nowMs)];
    case 'finished':
      return batch.decided ? [] : [...passed(batch, nowMs), { code: 'look-through' }];
  }
}

function atBench(batch: Batch): Due[] {
  if (!(batch.leanG + batch.fatG > 0)) return [{ code: 'weigh-meat' }];
  const left = batch.opened.body.formula.lines.filter(
    ({ id, role }) => !isMeat(role) && !batch.weighedOut.has(id),
  ).length;
  if (left > 0) return [{ code: 'weigh-out', left }];
  return [{ code: batch.opened.body.formula.kind === 'comminuted' ? 'bench' : 'salt-through' }];
}

function passed(batch: Batch, nowMs: number): Due[] {
  const handled = batch.decided !== null || batch.actions.some(({ body }) => body.about === 'degree-hours');
  return !handled && fermentFigures(batch, nowMs)?.finding.verdict === 'deviation'
    ? [{ code: 'degree-hours-passed' }]
    : [];
}

function fermenting(batch: Batch, nowMs: number): Due[] {
  const list = passed(batch, nowMs);
  if (batch.fermentEnded) return [...list, { code: 'hang' }];
  const clock = fermentFigures(batch, nowMs);
  if (clock?.stop) return list;
  if (!clock?.ahead || clock.ahead.isStale) list.push({ code: 'read-room' });
  const lastPhMs = batch.ph.at(-1)?.atMs ?? batch.stuffedAtMs ?? nowMs;
  if (nowMs - lastPhMs >= PH_EVERY_HOURS * HOUR_MS)
    list.push({
      code: 'read-ph',
      // Where the numbers are shown for reference only, nothing runs out.
      runsOutAtMs: clock?.finding.verdict === 'does-not-apply' ? null : (clock?.ahead?.runsOutAtMs ?? null),
    });
  return list;
}

function hanging(batch: Batch, nowMs: number): Due[] {
  const up = batch.pieces.filter((piece) => piece.status === 'hanging');
  const atTarget = up.filter((piece) => pieceFigures(piece).atTarget).length;
  const list: Due[] = atTarget > 0 ? [{ code: 'at-target', pieces: atTarget }] : [];
  const lastAtMs = lastRoundMs(batch);
  const hungMs = batch.hung?.atMs ?? nowMs;
  const { atMs, isHalfDay } = nextRound({ hungMs, lastMs: lastAtMs, nowMs });
  if (up.length > 0 && nowMs >= atMs)
    list.push(
      isHalfDay && nowMs < hungMs + 24 * HOUR_MS ? { code: 'half-day' } : { code: 'weigh-round', lastAtMs },
    );
  return list;
}

/** The last weighing of what still hangs; null before the first. */
export function lastRoundMs({ pieces }: Batch): number | null {
  const times = pieces
    .filter(({ status }) => status === 'hanging')
    .flatMap(({ weighings }) => weighings.map(({ atMs }) => atMs));
  return times.length > 0 ? Math.max(...times) : null;
}
