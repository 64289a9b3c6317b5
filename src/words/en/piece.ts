import { type Said, said, strong } from '#words/said.ts';

export const piece = {
  title: (number: number) => `Piece ${number}`,
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: {
    unweighed: said('Not weighed since it was stuffed.'),
    atTarget: (loss: string): Said => said(`It has lost ${loss}: `, strong('at target weight'), '.'),
    toGo: (loss: string, toGo: string, window: string | null): Said =>
      window === null
        ? said(`It has lost ${loss}; `, strong(`${toGo} to go`), '. At this humidity it may never get there.')
        : said(
            `It has lost ${loss}; `,
            strong(`${toGo} to go`),
            `. At target weight ${window}, as far as can be told.`,
          ),
    working: (loss: string, toGo: string): Said =>
      said(
        `It has lost ${loss}; `,
        strong(`${toGo} to go`),
        '. When it should be there is being worked out.',
      ),
    down: said('Taken down.'),
    bagged: said('Bagged to even out; its clock stands still.'),
  },
  figures: {
    green: 'green weight',
    last: (ago: string) => `weight ${ago}`,
    target: 'target weight',
    diameter: 'diameter',
  },
  weighings: 'Weighings',
  strike: 'Strike the last weighing',
  strikeReason: 'weighed by mistake',
  stage: { 'to-drying': 'on moving to drying', round: 'weigh round', 'taken-down': 'on taking down' },
  act: {
    target: 'Change target',
    bag: 'Bag it',
    rehang: 'Hang it again',
    down: 'Take down',
    batch: 'Its batch',
  },
  target: {
    title: 'Target loss',
    label: 'Target loss',
    reason: 'Why',
    save: 'Save',
    needed: 'Say why, in a word.',
  },
  cut: {
    open: 'Cut and hang on',
    title: 'Cut and hang on',
    before: 'On the scale before the cut',
    after: 'On the scale after it',
    hint: 'With string and hook, as it is always weighed.',
    most: '100 kg',
    note: 'What the cut showed',
    noteHint: 'Rim, heart, smell, colour',
    notLess: 'More than before the cut.',
    onlyTare: 'That is no more than string and hook.',
    save: 'It hangs again',
    caution: 'The cut end is bare: it dries faster, and moulds. Cover it with fat or paper.',
  },
  again: { reason: 'hung again' },
  bag: { reason: 'to even out' },
  rehang: { reason: 'evened out' },
  down: {
    title: 'Take down',
    why: 'Why?',
    reasons: { 'at-target': 'at target', test: 'to cut and test', trouble: 'trouble', other: 'other' },
    note: 'Note',
    save: 'Take it down',
  },
};
