import { type Said, said, strong } from '#words/said.ts';

/** Pork in the freezer against Trichinella: how far a lot has come in the published table. */
export const freezing = {
  title: 'Freezing',
  line: (name: string, lot: string) => (lot ? `${name} · lot ${lot}` : name),
  back: 'Received',
  sentence: {
    noRules: said('No rule set was chosen: ', strong('choose one'), ' in Kit, or no table holds.'),
    notFrozen: said(
      'Not in the freezer yet. The clock starts when ',
      strong('the warmest part'),
      ' is at temperature, not when the door closes.',
    ),
    game: said(
      strong('The table does not cover this meat.'),
      ' It is for pork only: Trichinella of game and horse can live through freezing. Have it tested.',
    ),
    tooThick: said(strong('Thicker than the table goes.'), ' Cut it smaller, or it gives no answer.'),
    noTable: said('This rule set holds no table. The US one is shown for reference; it gives no verdict.'),
    noProbe: said(
      'No probe in the warmest part was read, so ',
      strong('no hour counts'),
      '. Read it there, in the thickest piece.',
    ),
    noRoom: said('The warmest part was read. Now ', strong('read the air of the freezer'), ' each day.'),
    waiting: said('Not at temperature yet: ', strong('the count has not begun'), '.'),
    stale: said('The freezer was not read for more than 26 hours. ', strong('Read it now'), '.'),
    running: (done: string, need: string, due: string): Said =>
      said(`${done} of ${need} counted. If it stays as cold, `, strong(`~${due}`), '.'),
    met: (need: string): Said =>
      said(strong(`${need} held.`), ' That speaks of Trichinella only, and of nothing else.'),
  },
  reserved:
    'This US table stood in a rule that has been reserved (withdrawn) since 2018. It is shown as it was printed; ask your authority what holds today.',
  rule: 'Trichinella',
  missing: {
    'core-temperature': 'no probe in the warmest part',
    'room-temperature': 'no temperature of the freezer',
    'core-at-temperature': 'not at temperature yet',
    'freezer-now': 'the freezer was not read lately',
  } as Readonly<Record<string, string>>,
  figures: {
    done: 'counted',
    row: 'row that holds',
    rowNote: (at: string) => `at ${at} or colder`,
    days: (count: string) => `${count} days`,
    due: 'due, if it stays as cold',
    thick: 'thickest piece',
  },
  restart: {
    warmer: (when: string) => `${when}: a warmer reading; the count began again`,
    'not-read': (when: string) => `${when}: not read for more than 26 hours before; the count began again`,
  },
  readings: 'What was read',
  act: { freeze: 'Into the freezer', read: 'Read the freezer' },
  freezeSheet: {
    thickness: 'Thickness of the thickest piece or box',
    method: 'What is held against the table?',
    room: 'air of the freezer',
    core: 'probe in the warmest part',
    hint: 'By the air, the time depends on thickness. By the probe, it does not.',
    save: 'Save',
  },
  readSheet: {
    temperature: 'Temperature',
    where: 'Where?',
    core: 'warmest part',
    room: 'air of the freezer',
    save: 'Save',
    unlikely: (value: string) => `${value} is not a freezer. Is that what it shows?`,
  },
  work: {
    title: 'Freezing against Trichinella',
    equation:
      'The row whose temperature no reading was warmer than, counted from the first reading of the warmest part at it; a warmer reading, or 26 hours without one, starts it again.',
    row: (at: string) => `at ${at} or colder`,
    caution: 'Speaks of Trichinella in pork only. It does nothing against bacteria, and nothing about game.',
  },
};
