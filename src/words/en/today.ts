import { type Said, said, strong } from '#words/said.ts';

export const today = {
  title: 'Today',
  ways: {
    title: 'What lies ahead',
    calendar: { title: 'Calendar', note: 'what hangs until when, and back from a date' },
    afterFault: { title: 'After a fault' },
    absence: { title: 'Absence', note: 'what to set, what to expect at return' },
  },
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
};
