import { type Said, said, strong } from '../said.ts';

export const today = {
  title: 'Today',
  nothing: 'Nothing is due.',
  welcome: {
    sentence: said(
      'This book is empty. ',
      strong('Set up the bench'),
      ' first: units, rule set, scale. Then open a batch from a formula.',
    ),
    setUp: 'Set up the bench',
  },
  none: said('No batch is under way. ', strong('Open one'), ' from a formula.'),
  toFormulas: 'To the formulas',
  sentence: (due: number, batches: number): Said =>
    due === 0
      ? said(
          batches === 1
            ? 'One batch is under way; nothing is due.'
            : `${batches} batches are under way; nothing is due.`,
        )
      : said(
          strong(due === 1 ? 'One thing is due' : `${due} things are due`),
          batches === 1 ? ' in one batch.' : ` in ${batches} batches.`,
        ),
  due: {
    deviation: 'Degree-hours passed: hold it and decide',
    fermentPh: (left: string) => `Read the pH; ${left} left`,
    fermentRoom: 'Read the room temperature: the clock has no reading',
    weighOut: (left: number) => (left === 1 ? 'Weigh out one line more' : `Weigh out ${left} lines more`),
    weighMeat: 'Weigh the meat',
    bench: 'Grind, mix and stuff',
    pieces: 'Weigh the pieces at stuffing',
    hang: 'Ferment ended: move to drying',
    weighRound: (days: number) =>
      days === 1 ? 'Weigh round: the last was yesterday' : `Weigh round: the last was ${days} days ago`,
    firstRound: 'First weigh round',
    atTarget: (count: number) =>
      count === 1 ? 'One piece is at target weight' : `${count} pieces are at target weight`,
    takenDown: 'All pieces are down: look the record through',
  },
};
