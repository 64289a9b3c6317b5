import { dates } from './dates.ts';

type Due =
  | { code: 'read-ph'; runsOutAtMs: number | null }
  | { code: 'weigh-out'; left: number }
  | { code: 'at-target'; pieces: number }
  | { code: 'weigh-round'; lastAtMs: number | null }
  | {
      code:
        | 'degree-hours-passed'
        | 'read-room'
        | 'hang'
        | 'hang-muscle'
        | 'weigh-meat'
        | 'bench'
        | 'salt-through'
        | 'weigh-stuffed'
        | 'half-day'
        | 'look-through';
    };

/** What a batch waits for, as one line. */
export function due(waits: Due, nowMs: number, zone: string): string {
  switch (waits.code) {
    case 'degree-hours-passed':
      return 'Degree-hours passed: hold it, and decide';
    case 'read-room':
      return 'Read the room: the clock has no temperature';
    case 'read-ph':
      if (waits.runsOutAtMs === null) return 'Read the pH';
      return `Read the pH; the hours ${waits.runsOutAtMs > nowMs ? 'run' : 'ran'} out ${dates.near(waits.runsOutAtMs, nowMs, zone)}`;
    case 'hang':
      return 'The ferment is over: move it to drying';
    case 'hang-muscle':
      return 'Salted through and dry outside: hang it to dry';
    case 'weigh-meat':
      return 'Weigh the meat';
    case 'weigh-out':
      return waits.left === 1 ? 'Weigh out one line more' : `Weigh out ${waits.left} lines more`;
    case 'bench':
      return 'Grind, mix and stuff';
    case 'salt-through':
      return 'In its bag until the salt is through, then case it';
    case 'weigh-stuffed':
      return 'Weigh each piece as it is stuffed';
    case 'half-day':
      return 'Weigh round, half a day after hanging';
    case 'at-target':
      return waits.pieces === 1
        ? 'One piece is at target weight'
        : `${waits.pieces} pieces are at target weight`;
    case 'weigh-round':
      return waits.lastAtMs === null
        ? 'First weigh round'
        : `Weigh round; the last was ${dates.ago(waits.lastAtMs, nowMs)}`;
    case 'look-through':
      return 'All pieces are down: look the record through';
  }
}
