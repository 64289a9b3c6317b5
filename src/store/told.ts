/** What a check found, as news: kept as notices, and told once. */
import type { ChainFault } from '#record/chain.ts';
import { now } from './clock.ts';
import { log } from './database.ts';
import type { Seen } from './look.ts';
import type { Told } from './state.ts';

const CLOCK_SLACK_MS = 2 * 60_000;

export function tell({ check, stored, copies, damaged }: Seen, restored: number): Told[] {
  const faults = (code: ChainFault['code']) => check.faults.filter((fault) => fault.code === code);
  const gaps = faults('gap').reduce(
    (sum, fault) => sum + ('toSeq' in fault ? fault.toSeq - fault.fromSeq + 1 : 0),
    0,
  );
  const { nowMs } = now();
  const ahead = stored.filter(({ entry }) => entry.writtenAtMs > nowMs + CLOCK_SLACK_MS).length;
  const told: Told[] = [
    { code: 'restored', count: restored },
    { code: 'recopied', count: copies ? check.recopy.length : 0 },
    { code: 'missing', count: check.missing },
    { code: 'damaged', count: damaged },
    { code: 'copy-damaged', count: copies?.damaged ?? 0 },
    { code: 'gap', count: gaps },
    { code: 'broken', count: faults('broken').length },
    { code: 'fork', count: faults('fork').length },
    { code: 'clock-behind', count: ahead },
  ];
  return told.filter(({ count }) => count > 0);
}

const STANDING: ReadonlySet<Told['code']> = new Set([
  'damaged',
  'copy-damaged',
  'gap',
  'broken',
  'fork',
  'clock-behind',
]);

/** A standing fault that was found before with the same count is not news. */
export async function news(told: readonly Told[]): Promise<Told[]> {
  const last = new Map((await log.notices.toArray()).map(({ code, count }) => [code, count]));
  return told.filter(({ code, count }) => !STANDING.has(code) || last.get(code) !== count);
}

export async function keepNotices(told: readonly Told[]): Promise<void> {
  const { nowMs } = now();
  await log.notices.bulkAdd(told.map((each) => ({ ...each, atMs: nowMs })));
}
