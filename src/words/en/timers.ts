import { type Said, said, strong } from '#words/said.ts';

/** What takes time before stuffing, and timers: times, not counters, so that they hold through a closed app. */
export const timers = {
  title: 'Times',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: {
    none: said(
      'When will you stuff? ',
      strong('Plan it'),
      ', and casings, culture and mould are ready together.',
    ),
    next: (what: string, when: string): Said => said('Next: ', strong(`${what}, ${when}`), '.'),
    late: (what: string, late: string): Said =>
      said(strong(what), ` should have begun ${late} ago. Begin it now, or plan stuffing later.`),
    begun: said('All that comes before stuffing has its time behind it.'),
  },
  plan: 'Plan stuffing',
  planField: 'Stuffing begins',
  set: 'Set a timer',
  save: 'Save',
  ahead: 'Choose a time that lies ahead.',
  tasks: {
    mould: 'Wake the mould',
    casings: 'Soak the casings',
    culture: 'Wake the culture',
    stuffing: 'Stuff',
  } as Readonly<Record<string, string>>,
  tasksTitle: 'Before stuffing',
  practice: 'Durations are common practice; what stands on the pack comes first.',
  takes: (span: string) => `takes ${span}`,
  lateBy: (span: string) => `late by ${span}`,
  timersTitle: 'Timers',
  name: 'What for?',
  minutes: 'Minutes',
  needed: 'Say what for.',
  until: (when: string) => `until ${when}`,
  over: 'over since',
  remove: 'Take it away',
  removed: 'taken away',
  calendar: 'Give the times to a calendar',
  calendarNote: 'An app like this cannot ring while it is closed; a calendar can.',
  given: {
    shared: 'Handed over.',
    'share-cancelled': 'Not handed over.',
    'download-begun': 'Given to the browser to save.',
    'not-possible': 'This browser will not hand over a file.',
  },
};
