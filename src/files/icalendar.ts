/**
 * Due times as a calendar file (RFC 5545), since a web app cannot promise an alarm. Written here and not by a library: folding
 * counts octets (section 3.1), and the time of making is passed in.
 */

export type DueEvent = {
  /** The same for the same due time for ever, so that a calendar replaces it and does not add a second. */
  readonly uid: string;
  /** Counts how often it was moved: a calendar keeps the highest. */
  readonly sequence: number;
  readonly title: string;
  readonly atMs: number;
  readonly alarmMinutesBefore: number;
  readonly note?: string | undefined;
  /** Takes an event back that was given out before. */
  readonly cancelled?: boolean | undefined;
};

/** How long it stands in the calendar; it blocks nobody's time. */
const SHOWN_MINUTES = 15;
const MOST_OCTETS = 75;

/** @throws RangeError for a uid, time, sequence or alarm that no calendar would read. */
export function calendar({ events, madeAtMs }: { events: readonly DueEvent[]; madeAtMs: number }): string {
  const stamp = utc(madeAtMs);
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Greenweight//Batch book//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    ...events.flatMap((event) => eventLines(event, stamp)),
    'END:VCALENDAR',
  ]
    .map((line) => `${folded(line)}\r\n`)
    .join('');
}

function eventLines(event: DueEvent, stamp: string): string[] {
  const { uid, sequence, title, atMs, alarmMinutesBefore, note, cancelled } = event;
  if (!/^[\w.:@-]{1,200}$/.test(uid))
    throw new RangeError(`calendar: uid requires up to 200 letters, digits or . : @ _ -, got ${uid}`);
  requireCount('sequence', sequence);
  requireCount('alarmMinutesBefore', alarmMinutesBefore);
  return [
    'BEGIN:VEVENT',
    `UID:${uid}`,
    `SEQUENCE:${sequence}`,
    `DTSTAMP:${stamp}`,
    `DTSTART:${utc(atMs)}`,
    `DURATION:PT${SHOWN_MINUTES}M`,
    `SUMMARY:${escaped(title)}`,
    ...(note === undefined ? [] : [`DESCRIPTION:${escaped(note)}`]),
    'TRANSP:TRANSPARENT',
    `STATUS:${cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    ...(cancelled ? [] : alarmLines(title, alarmMinutesBefore)),
    'END:VEVENT',
  ];
}

function alarmLines(title: string, minutes: number): string[] {
  const trigger = `TRIGGER:${minutes === 0 ? '' : '-'}PT${minutes}M`;
  return ['BEGIN:VALARM', 'ACTION:DISPLAY', trigger, `DESCRIPTION:${escaped(title)}`, 'END:VALARM'];
}

/** A form of UTC that needs no zone table: 20260105T120000Z. */
function utc(atMs: number): string {
  if (!(atMs >= 0 && atMs < Date.UTC(10_000, 0)))
    throw new RangeError(`calendar: a time requires 1970 to 9999, got ${atMs}`);
  return `${new Date(atMs).toISOString().slice(0, 19).replace(/[-:]/g, '')}Z`;
}

function requireCount(name: string, value: number): void {
  if (!(Number.isInteger(value) && value >= 0 && value <= 1_000_000))
    throw new RangeError(`calendar: ${name} requires a whole number from 0 to 1000000, got ${value}`);
}

/** TEXT of section 3.3.11; control characters have no place in it and become spaces. */
function escaped(text: string): string {
  return [...text.replace(/\r\n?/g, '\n').replace(/[\\;,]/g, '\\$&')]
    .map((character) => (character === '\n' ? '\\n' : isControl(character) ? ' ' : character))
    .join('');
}

function isControl(character: string): boolean {
  const code = character.charCodeAt(0);
  return code < 0x20 || code === 0x7f;
}

/** Lines of at most 75 octets, the space that begins a line counted, and no character cut in two. */
function folded(line: string): string {
  let octets = 0;
  let text = '';
  for (const character of line) {
    const size = new TextEncoder().encode(character).length;
    if (octets + size > MOST_OCTETS) {
      text += '\r\n ';
      octets = 1;
    }
    text += character;
    octets += size;
  }
  return text;
}
