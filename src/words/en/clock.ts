import { type Said, said, strong } from '#words/said.ts';

const entries = (count: number): string => (count === 1 ? 'one entry' : `${count} entries`);
const many = (count: number): string => (count === 1 ? 'One entry' : `${count} entries`);

const MINUTE_MS = 60_000;
const part = (count: number, one: string, more: string) => (count === 1 ? `1 ${one}` : `${count} ${more}`);

/** To the minute, which is as near as a phone's picker knows it. */
function exactly(byMs: number): string {
  const minutes = Math.round(Math.abs(byMs) / MINUTE_MS);
  const days = Math.floor(minutes / 1440);
  const hours = Math.floor((minutes % 1440) / 60);
  const parts = [
    days > 0 ? part(days, 'day', 'days') : '',
    hours > 0 ? `${hours} h` : '',
    minutes % 60 > 0 || minutes === 0 ? `${minutes % 60} min` : '',
  ];
  return parts.filter(Boolean).join(' ');
}

function about(byMs: number): string {
  const hours = Math.abs(byMs) / (60 * MINUTE_MS);
  if (hours >= 48) return `about ${Math.round(hours / 24)} days`;
  if (hours >= 2) return `about ${Math.round(hours)} hours`;
  return `about ${Math.round(hours * 60)} minutes`;
}

const moves = (shiftMs: number) => `${shiftMs < 0 ? 'back' : 'forward'} by ${exactly(shiftMs)}`;

export const clock = {
  title: 'Clock of the phone',
  toKeeping: 'Backup',
  row: 'Put the clock of a phone right',
  rowNote: (doubts: number) =>
    doubts === 0
      ? 'Entries made while the date or the time was wrong.'
      : 'Some entries wait for their true time.',
  none: said(
    'No clock went back that is not put right. A clock that still runs ahead shows only when it comes back.',
  ),
  open: (steps: number, count: number): Said =>
    said(
      strong(`${many(count)} may stand at a wrong time.`),
      steps === 1 ? ' A clock went back once.' : ` A clock went back ${steps} times.`,
      ' Nothing is moved until you say when one of them truly was.',
    ),
  thisPhone: 'this phone',
  phone: (end: string) => `phone …${end}`,
  phoneLabel: 'Phone',
  doubts: 'Where a clock went back',
  step: (phone: string, byMs: number, told: boolean) =>
    `On ${phone} the clock went back by ${about(byMs)}.${told ? '' : ' The book does not tell which side of it was wrong.'}`,
  side: {
    ahead: (count: number, byMs: number | null) =>
      byMs === null
        ? `${many(count)} before it, if the clock ran ahead then`
        : `${many(count)} before it, if the clock ran ${about(byMs)} ahead then`,
    behind: (count: number, byMs: number | null) =>
      byMs === null
        ? `${many(count)} after it, if the clock was behind then`
        : `${many(count)} after it, if the clock was ${about(byMs)} behind then`,
  },
  likely: 'likely',
  range: (first: number, last: number, from: string, to: string) =>
    first === last
      ? `Entry ${first}, shown as ${from}`
      : `Entries ${first} to ${last}, shown as ${from} to ${to}`,
  other: 'Put other entries right',

  sheet: 'Put the clock right',
  from: 'First entry',
  to: 'Last entry',
  numberHint: 'Each phone numbers its entries.',
  list: 'These entries',
  shown: (seq: number, shown: string) => `entry ${seq}, the phone showed ${shown}`,
  more: (count: number) => `and ${entries(count)} between`,
  known: 'Of which entry do you know the true time?',
  knownFirst: 'the first',
  knownLast: 'the last',
  truth: (shown: string) => `It truly was (the phone showed ${shown})`,
  truthHint:
    'What stands here at first is reckoned from the entries around it, and only roughly. Put in what you know.',
  reason: 'Reason',
  reasonHint: 'For example: the date was wrong after the battery was empty.',
  preview: (n: { count: number; shiftMs: number; becomes: string; showed: string }): Said =>
    said(
      strong(`${many(n.count)} ${n.count === 1 ? 'moves' : 'move'} ${moves(n.shiftMs)}.`),
      ` The first becomes ${n.becomes}; the phone showed ${n.showed}.`,
    ),
  byHand: (days: number, stay: number): string =>
    [
      days > 0 ? `${many(days)} with a time set by hand: the day moves, the hour stays.` : '',
      stay > 0 ? `${many(stay)} with a time set by hand: it stays, since it fits the true day.` : '',
    ]
      .filter(Boolean)
      .join(' '),
  outOfOrder:
    'After this an entry still lies before one that the same phone wrote earlier. Look at the numbers and the time again.',
  note: 'What was written stays as it is, and the record shows both times.',
  save: 'Put them right',
  problem: {
    number: 'The number of an entry, in figures.',
    order: 'The last comes before the first.',
    nothing: 'This phone wrote no entry with these numbers.',
    twice: 'Some of these were put right before. Leave them out, or strike that correction first.',
    time: 'The date and the time, as they truly were.',
    ahead: 'Then the last of them would lie ahead of now.',
    same: 'That is what the phone showed: nothing would move.',
    impossible: 'That is no time at which these can have been written.',
    reason: 'Why was the clock wrong? An inspector will ask.',
  },

  corrections: 'Put right',
  noCorrections: 'No clock was put right so far.',
  correction: (phone: string, first: number, last: number, shiftMs: number) =>
    `${phone}, ${first === last ? `entry ${first}` : `entries ${first} to ${last}`}: ${moves(shiftMs)}`,
  correctionNote: (by: string, at: string, reason: string) =>
    [`${at}${by ? ` by ${by}` : ''}`, reason].filter(Boolean).join(': '),
  struck: 'struck',
  rival: 'Another correction of the same entries was written later, and counts.',
  strike: {
    strikeTitle: 'Strike the correction',
    strikeText:
      'The entries go back to the times that the phone showed. The correction stays on the record as struck.',
    strike: 'Strike it',
    reason: 'Reason',
    reasonNeeded: 'Why is it struck?',
  },

  onRecord: {
    right: (n: { by: string; reason: string; showed: string; shiftMs: number }) =>
      `clock put right ${moves(n.shiftMs)}${n.by ? ` by ${n.by}` : ''}: ${n.reason}; the phone showed ${n.showed}`,
    outdone: (n: { by: string; reason: string; shiftMs: number }) =>
      `not counted, since another was written later: clock ${moves(n.shiftMs)}${n.by ? ` by ${n.by}` : ''}: ${n.reason}`,
    doubted: (side: 'ahead' | 'behind', byMs: number) =>
      `time in doubt: the clock of the phone may have stood ${about(byMs)} ${side}, and was not put right`,
    doubtedUnknown: 'time in doubt: the clock of the phone went back, and was not put right',
    notKnown: 'Whether a clock of a phone stood wrong was not looked at when this was printed.',
    count: (count: number) =>
      `The time of ${entries(count)} is in doubt: a clock of a phone stood wrong and was not put right.`,
  },
};
