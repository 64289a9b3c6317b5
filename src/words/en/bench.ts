import { type Said, said, strong } from '#words/said.ts';

export const bench = {
  title: 'At the bench',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: {
    cleaned: said(
      strong('Clean first'),
      ': bench, knives, grinder, stuffer. Then cold meat, cold metal, sharp knife.',
    ),
    ground: said('Clean is written down. ', strong('Grind'), ' it cold, and write its temperature.'),
    mixed: said(
      'Ground. ',
      strong('Mix'),
      ' salt and cure in first, then culture and spices, until it sticks.',
    ),
    stuffed: said(
      'Mixed. ',
      strong('Stuff'),
      ' it firm; the ferment clock starts with the first room temperature after it.',
    ),
    done: said('Stuffed. ', strong('Weigh each piece'), ', then the ferment.'),
    miscounted: said(
      'The meat is not what was planned. ',
      strong('Count it again at the weigh-out'),
      ', or say there that it is meant, before anything is mixed.',
    ),
    weighOut: (left: number): Said =>
      said(
        left === 1 ? 'One line is not weighed out yet. ' : `${left} lines are not weighed out yet. `,
        strong('Weigh out'),
        ' before anything is mixed.',
      ),
  },
  /** A whole muscle: nothing of it is minced. */
  ofMuscle: {
    cleaned: said(strong('Clean first'), ': bench, knives, casing. Then rub each piece with its own salt.'),
    ground: said(strong('Nothing to grind'), ': it is a whole muscle.'),
    mixed: said(strong('Nothing to mix'), ': it is a whole muscle.'),
    stuffed: said(
      'Keep each piece ',
      strong('cold in its bag until the salt is through'),
      '. Write it down when it is cased and tied.',
    ),
    done: said('Cased. ', strong('Weigh each piece'), ', then hang it to dry.'),
  },
  step: { cleaned: 'Cleaned', ground: 'Ground', mixed: 'Mixed', stuffed: 'Stuffed' },
  act: {
    cleaned: 'Write down: cleaned',
    ground: 'Write down: ground',
    mixed: 'Write down: mixed',
    stuffed: 'Write down: stuffed',
  },
  doneAt: (clock: string) => `at ${clock}`,
  notYet: 'not yet',
  temperature: {
    ground: 'Temperature of the mince',
    mixed: 'Temperature of the mix',
    stuffed: 'Temperature of the mix',
  },
  wasAt: {
    leanC: (value: string) => `lean ${value}`,
    fatC: (value: string) => `fat ${value}`,
  },
  before: { leanC: 'Lean before grinding', fatC: 'Fat before grinding' },
  gate: {
    go: (value: string) => `go: ${value}`,
    mind: (value: string, most: string) => `mind it: ${value}, and ${most} is the most`,
    stop: (value: string, most: string, minutes: number) =>
      `stop: ${value} is above ${most}. Chill it for ${minutes} min, then measure again`,
    stopReceived: (value: string, most: string) =>
      `stop: ${value} is above ${most}. Send it back, or say in the note why it was taken`,
    chill: 'It smears when warm. Back into the cold, and measure again before going on.',
    practice: 'These gates are common practice; local law on temperatures comes first.',
    timer: (minutes: number) => `Set a timer of ${minutes} min`,
    timerName: (step: string) => `Chill, then measure again (${step.toLowerCase()})`,
    override: 'Going on all the same? Say why',
    overrideHint: 'It stands on the record.',
    overrideNeeded: 'Say why, or chill it first.',
    wentOn: (reason: string) => `went on: ${reason}`,
  },
  minutes: 'Minutes it took',
  long: (minutes: string) => `${minutes} min for one step: meat grows warm in less. Did it take so long?`,
  note: 'Note',
  when: 'When',
  now: 'Now',
  earlier: 'Earlier',
  save: 'Save',
  again: 'Write it down again',
  strikeReason: 'written down again',
  meat: 'pH of the fresh mix',
  readPh: 'Read the pH of the mix',
  toPieces: 'Weigh the pieces',
  toWeighOut: 'Weigh out',
  optional: 'may stay empty',
};
