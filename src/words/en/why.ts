import { dates } from './dates.ts';

type DueCode =
  | 'degree-hours-passed'
  | 'read-room'
  | 'read-ph'
  | 'hang'
  | 'hang-muscle'
  | 'weigh-meat'
  | 'weigh-out'
  | 'bench'
  | 'salt-through'
  | 'weigh-stuffed'
  | 'half-day'
  | 'at-target'
  | 'weigh-round'
  | 'look-through';

const reasons: Readonly<Record<DueCode, string>> = {
  'degree-hours-passed': 'the published limit is passed',
  'read-room': 'without it degree-hours cannot be counted',
  'read-ph': 'every 6 to 12 h while it ferments (common practice)',
  hang: 'what stays warm goes on fermenting',
  'hang-muscle': 'no ferment is planned for it',
  'weigh-meat': 'everything else is counted from it',
  'weigh-out': 'the mix is not whole',
  bench: 'mixed meat does not wait',
  'salt-through': 'makers keep a muscle 7 to 21 days in the bag (common practice)',
  'weigh-stuffed': 'later nobody can know the green weight',
  'half-day': 'the first half day shows a rim that dries too fast',
  'at-target': 'press it, cut one, decide',
  'weigh-round': 'daily in the first week, then weekly (common practice)',
  'look-through': 'nobody has decided on it yet',
};

/** Lines of Today that are not about one batch, and why each line stands there. */
export const why = {
  batch: (code: DueCode): string => reasons[code],
  airWarm: (n: {
    name: string;
    airC: string;
    sinceMs: number;
    untilMs: number | null;
    nowMs: number;
    zone: string;
  }) =>
    n.untilMs === null
      ? `${n.name} is warm: ${n.airC} since ${dates.near(n.sinceMs, n.nowMs, n.zone)}`
      : `${n.name} was warm: up to ${n.airC}, ${dates.near(n.sinceMs, n.nowMs, n.zone)} to ${dates.near(n.untilMs, n.nowMs, n.zone)}`,
  airWarmWhy: (limit: string) => `above ${limit}, and nobody wrote down what was done`,
  airUnread: (n: { name: string; lastAtMs: number | null; nowMs: number }) =>
    n.lastAtMs === null
      ? `Read the air of ${n.name}`
      : `Read the air of ${n.name}; the last was ${dates.ago(n.lastAtMs, n.nowMs)}`,
  airUnreadWhy: 'by hand daily, by logger file weekly (common practice)',
  leave: (n: { fromMs: number; nowMs: number; zone: string }) =>
    `Set everything for your absence: you leave ${dates.near(n.fromMs, n.nowMs, n.zone)}`,
  leaveWhy: (n: { toMs: number; zone: string }) => `away until ${dates.day(n.toMs, n.zone)}`,
  returned: 'Look at what happened while you were away',
  returnedWhy: 'weigh, read the air, and compare with what was expected',
  backUp: (entries: number) =>
    entries === 1
      ? 'Back up: one entry is on this phone only'
      : `Back up: ${entries} entries are on this phone only`,
  backUpWhy: (ago: string) => `the oldest of them was written ${ago}`,
  mixed: (count: number) => (count === 1 ? 'One thing is due' : `${count} things are due`),
};
