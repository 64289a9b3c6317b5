import { type Said, said, strong } from '#words/said.ts';
import { dates } from './dates.ts';

export const hanging = {
  title: 'Hanging',
  line: (name: string, lot: string, day: number) => `${name} · lot ${lot} · day ${day}`,
  sentence: {
    noPieces: said(
      'No piece was weighed at stuffing. ',
      strong('Weigh them'),
      ' first: loss is counted against green weight.',
    ),
    notHung: said('Not moved to drying yet. ', strong('End the ferment'), ' first.'),
    noneWeighed: (window: string): Said =>
      said(
        'No piece was weighed since it was stuffed. By diameter and air alone the first may be at target weight ',
        strong(window),
        '.',
      ),
    onCourse: (count: number, window: string): Said =>
      said(
        count === 1
          ? 'The piece should be at target weight '
          : 'The first of them should be at target weight ',
        strong(window),
        '.',
      ),
    atTarget: (count: number, of: number): Said =>
      said(
        strong(
          count === of
            ? of === 1
              ? 'It is at target weight'
              : 'All are at target weight'
            : count === 1
              ? `One of ${of} is at target weight`
              : `${count} of ${of} are at target weight`,
        ),
        '. ',
        strong('Take down'),
        ' what is; the number says look, the fingers decide.',
      ),
    never: (chance: string, count: number): Said =>
      said(
        count === 1
          ? `At this humidity there is a chance of about ${chance} that the target is never reached.`
          : `At this humidity there is a chance of about ${chance} that not all of them ever reach it.`,
      ),
    tooFast: (count: number, of: number): Said =>
      said(
        strong(
          count === of
            ? of === 1
              ? 'It dries too fast'
              : `All ${of} dry too fast`
            : count === 1
              ? `One of ${of} dries too fast`
              : `${count} of ${of} dry too fast`,
        ),
        ' for its rim: a hard rim holds the water in. ',
        strong('Slow it down now'),
        '.',
      ),
    firstEvening: said(
      strong('Weigh on hanging, and again half a day later'),
      ': that shows best whether the air draws too hard on the rim.',
    ),
    working: (count: number): Said =>
      said(
        count === 1
          ? 'When it should be at target weight is being worked out.'
          : 'When they should be at target weight is being worked out.',
      ),
    open: said('At this humidity it may never reach its target.'),
    down: said('All pieces are taken down.'),
  },
  /** The days between which it should be; open at the end where there is a real chance of never. Null when nothing can be said. */
  window: (
    { p10Ms, p90Ms }: { readonly p10Ms: number | null; readonly p90Ms: number | null },
    { nowMs, zone }: { readonly nowMs: number; readonly zone: string },
  ): string | null => {
    if (p10Ms === null) return null;
    const fromMs = Math.max(p10Ms, nowMs);
    if (p90Ms === null) return `from ${dates.day(fromMs, zone, nowMs)} on, with no end in sight`;
    return dates.between(fromMs, Math.max(p90Ms, fromMs), zone, nowMs);
  },
  rail: (count: number) => (count === 1 ? 'One piece on the rail' : `${count} pieces on the rail`),
  pieceAlone: (number: number) => `Piece ${number}`,
  piece: (number: number, state: string) => `Piece ${number}: ${state}`,
  state: {
    atTarget: 'at target weight',
    toGo: (grams: string) => `${grams} to go`,
    unweighed: 'not weighed yet',
    down: 'taken down',
    bagged: 'bagged',
  },
  tag: 'at target',
  tagDown: 'down',
  chart: {
    title: 'Loss since stuffing',
    y: 'loss, %',
    x: 'days since stuffing',
    target: (loss: string) => `target ${loss} %`,
    today: 'today',
    label: (pieces: number, weighed: number) =>
      `Loss of ${pieces} pieces over time, ${weighed} weighings; dashed what is expected, tinted its window.`,
    waiting: 'Drawing',
    failed: 'The picture could not be drawn; the numbers stand below.',
    table: 'The same as numbers',
    columns: ['When', 'Piece', 'Weight', 'Loss'],
    expected: 'expected, middle',
    window: ({ middle, low, high }: { middle: string; low: string; high: string }) =>
      `~${middle}\u00a0% (${low} to ${high}\u00a0%)`,
    estimate: 'The dashed line and its window are estimates (10 to 90 % of the cases).',
  },
  figures: {
    loss: 'loss, middle of the pieces',
    toGo: 'to go, middle',
    first: 'first at target',
    last: 'all done',
    unlikely: 'perhaps never',
    window: '10 to 90 %',
  },
  act: { round: 'Weigh round', down: 'Take down', record: 'Record' },
  down: {
    title: 'Take down',
    sentence: (count: number): Said =>
      said(
        count === 1 ? 'One piece is at target weight. ' : `${count} pieces are at target weight. `,
        'Press it, cut one: even and firm to the heart?',
      ),
    all: (count: number) => (count === 1 ? 'Take it down' : `Take all ${count} down`),
    note: 'Note',
    caution: 'At target weight is not a release. Water activity, pH and your rules decide that.',
  },
};
