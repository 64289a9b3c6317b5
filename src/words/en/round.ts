import { type Said, said, strong } from '#words/said.ts';

export const round = {
  title: 'Weigh round',
  line: (number: number, of: number) => `piece ${number} of ${of}`,
  value: 'on the scale',
  was: (weight: string, when: string) => `was ${weight} ${when}`,
  green: (weight: string) => `green weight ${weight}`,
  lost: (loss: string, toGo: string): Said => said(strong(`${loss} lost`), ` · ${toGo} to go`),
  atTarget: (loss: string): Said => said(strong(`${loss} lost`), ' · ', strong('at target weight')),
  heavier: (by: string): Said => said(`${by} heavier than it was green.`),
  less: (by: string): Said => said(` · ${by} less than last time`),
  more: (by: string): Said => said(` · ${by} more than last time`),
  same: said(' · the same as last time'),
  waits: 'Type what the scale shows.',
  save: (next: number | null) => (next === null ? 'Save, last one' : `Save, next is ${next}`),
  skip: 'Skip',
  undo: (number: number) => `Strike piece ${number}`,
  find: 'Find',
  strike: 'Strike',
  findTitle: 'Find another piece',
  findText: 'The number on its tag. A weighed one can be weighed again.',
  otherTag: 'That tag is of no piece that hangs in this batch.',
  noCamera: 'The camera did not start. Tap the number instead.',
  weighedNow: 'weighed',
  toWeigh: (number: number, weighed: boolean) => `Piece ${number}${weighed ? ', weighed in this round' : ''}`,
  done: {
    title: 'Round done',
    sentence: (weighed: number, of: number, atTarget: number): Said =>
      atTarget === 0
        ? said(strong(`${weighed} of ${of} pieces`), ' weighed.')
        : said(
            strong(`${weighed} of ${of} pieces`),
            ' weighed; ',
            strong(atTarget === 1 ? 'one is at target weight' : `${atTarget} are at target weight`),
            '.',
          ),
    toHanging: 'To the rail',
    again: 'Weigh the skipped',
  },
  none: said('No piece hangs here.'),
  gained: (typed: string, before: string) =>
    `${typed}: it was ${before} before. Pieces lose weight. Is that what the scale shows?`,
  dropped: (typed: string, before: string) =>
    `${typed}: it was ${before} before. That is much at once. Is that what the scale shows?`,
  drawing: (number: number) => `Piece ${number}`,
  strikeReason: 'weighed by mistake',
  saved: (number: number, weight: string) => `Piece ${number}: ${weight} saved`,
};
