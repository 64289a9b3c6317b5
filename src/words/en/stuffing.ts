import { type Said, said, strong } from '#words/said.ts';

export const stuffing = {
  title: 'Pieces',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  setUp: said('Say once what all pieces share; then ', strong('each piece is only its weight'), '.'),
  piece: (number: number) => `Piece ${number}`,
  sentence: (count: number, total: string): Said =>
    count === 0
      ? said('Weigh ', strong('the first piece'), ' as it hangs: string and clip on, tag off.')
      : said(strong(count === 1 ? 'One piece' : `${count} pieces`), `, ${total} in all.`),
  diameter: 'Diameter as stuffed',
  casing: 'Casing',
  casingHint: 'Kind and calibre, as on its pack',
  target: 'Target loss',
  targetHint: 'Usual 30 to 40 %, more for fat-poor mixes. Common practice.',
  tare: 'Tare',
  tareHint: 'String, clip, hook and tag on the scale with it; 0 if it is weighed without.',
  begin: 'Begin to weigh',
  change: 'Change what they share',
  green: 'green weight',
  previous: (number: number, weight: string) => `piece ${number}: ${weight}`,
  save: (next: number) => `Save, next is ${next}`,
  undo: 'Strike the last',
  done: 'All weighed',
  unlikely: (typed: string, usual: string) =>
    `${typed}: the others weigh about ${usual}. Is that what the scale shows?`,
  long: (typed: string, diameter: string, length: string) =>
    `${typed}: at ${diameter} it would be ${length} long. Is that what the scale shows?`,
  heavyTare: (tare: string, usual: string) =>
    `A tare of ${tare}: string, clip, hook and tag are mostly less than ${usual}. Is that what they weigh?`,
  notAbove: (tare: string) => `This is not more than the tare of ${tare}.`,
  strikeReason: 'weighed by mistake',
  measuredAgain: 'measured again',
  used: {
    act: 'Casing used',
    known: (length: string) => `Casing used: ${length}`,
    title: 'Casing used',
    field: 'Casing in all',
    hint: 'What was taken off the reel for these pieces, ends with it. Your own fill is learned from it.',
  },
  on: (scale: string) => `on ${scale}`,
};
