import { type Said, said, strong } from '#words/said.ts';
import { today } from './today.ts';

const pieces = (count: number) => (count === 1 ? 'One piece' : `${count} pieces`);

export const absence = {
  title: today.ways.absence.title,
  none: said('Say when you are away: the app says ', strong('what to set'), ' and what to expect at return.'),
  planned: (n: { from: string; to: string; days: number }): Said =>
    said(
      `Away for ${n.days === 1 ? 'a day' : `${n.days} days`}, `,
      strong(n.days === 0 ? n.from : `${n.from} to ${n.to}`),
      '.',
    ),
  under: (n: { to: string }): Said =>
    said('Away until ', strong(n.to), '. What can wait is not listed in Today.'),
  returned: (n: { to: string }): Said =>
    said(`Back since ${n.to}: `, strong('weigh, and compare'), ' with what was expected.'),
  from: 'Leaving',
  to: 'Back',
  helper: 'Who looks in, and how to reach them',
  helperHint: 'Stays on this phone, and in its backups.',
  helperLine: (helper: string): Said => said('Looks in: ', strong(helper), '.'),
  save: 'Plan it',
  order: 'You come back after you leave.',
  plan: 'Plan an absence',
  strike: 'Not going after all',
  strikeReason: 'plans changed',
  set: 'What to set before you leave',
  setTo: (n: { airC: string; rh: string; now: string | null }) =>
    `${n.airC}, humidity ${n.rh}${n.now === null ? '' : `; it was ${n.now} at the last reading`}`,
  setWhy: 'under the water activity expected at your return, so that nothing crusts while nobody looks',
  setNothing: 'Nothing hangs, so there is nothing to set.',
  weigh:
    'Weigh everything and fill the humidifier on the day you leave; ask your helper to read the air every other day.',
  expect: 'What to expect at return',
  foundTitle: 'Expected, and found',
  working: said(
    strong('Being worked out'),
    ': what each piece should have lost at your return, by its own weighings and those of its fellows.',
  ),
  setWorking: 'Being worked out from what should hang here at your return.',
  failed: 'What to expect could not be worked out on this phone; weights and losses stand.',
  expected: (n: {
    pieces: number;
    leaving: string | null;
    middle: string;
    window: string;
    passes: number;
  }): Said =>
    said(
      `${n.pieces === 1 ? 'One piece' : `${n.pieces} pieces`}, `,
      n.leaving === null ? 'not weighed yet' : `${n.leaving} lost at the last weighing`,
      '; at your return ',
      strong(n.middle),
      ` (${n.window}).`,
      ...(n.passes === 0
        ? []
        : [
            ' ',
            strong(n.passes === n.pieces && n.pieces > 1 ? 'All' : n.passes === 1 ? 'One' : `${n.passes}`),
            ' may pass the target while you are away: take down before what must not.',
          ]),
    ),
  foundNone: (n: { middle: string; window: string }): Said =>
    said(`Expected ${n.middle} (${n.window}); `, strong('not weighed yet'), '.'),
  found: (n: {
    middle: string;
    found: string;
    weighed: number;
    inside: number;
    less: number;
    more: number;
  }): Said =>
    said(
      `Expected ${n.middle}, `,
      strong(`found ${n.found}`),
      `; ${n.inside} of ${n.weighed} within what was expected.`,
      ...(n.more === 0 ? [] : [` ${pieces(n.more)} lost more: look for dry skins.`]),
      ...(n.less === 0 ? [] : [` ${pieces(n.less)} lost less: look at the humidity.`]),
    ),
  foundPiece: (weight: string, how: 'inside' | 'less' | 'more') =>
    ({ inside: `${weight}, within`, less: `${weight}, lost less`, more: `${weight}, lost more` })[how],
  notWeighed: 'not weighed',
  all: (count: number) => (count === 1 ? 'The piece' : `All ${count} pieces`),
  columns: { number: 'Piece', leaving: 'Leaving', expected: 'Expected', found: 'Found' },
  caution:
    'An estimate: eight in ten should lie within. A power cut, an empty humidifier or a door left open are not in it.',
};
