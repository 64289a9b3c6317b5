import { type Said, said, strong } from '#words/said.ts';

const aspects = {
  look: 'Look of the slice',
  smell: 'Smell',
  bite: 'Bite',
  taste: 'Taste',
  overall: 'Overall',
};

export const tasting = {
  title: 'Tasting',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  none: said(
    'Nobody has tasted it. ',
    strong('Cut one, and mark five things'),
    ' while it is fresh in mind.',
  ),
  sentence: (mark: string, tasters: number): Said =>
    tasters === 1
      ? said('One taster gives it ', strong(`${mark} of 5`), ' overall.')
      : said(strong(`${mark} of 5`), ` overall, the middle of ${tasters} tasters.`),
  note: (tasters: number, mark?: string) =>
    tasters === 0 ? 'not yet' : `${mark} of 5, ${tasters === 1 ? 'one taster' : `${tasters} tasters`}`,
  aspects,
  of: 'of 5',
  apart: (marks: number) =>
    marks === 0 ? 'all tasters alike' : marks === 1 ? 'tasters one apart' : `tasters ${marks} apart`,
  who: (names: string) => `Tasted by ${names}.`,
  notReleased: 'This batch is not released. Whoever tastes it takes the risk that the decision is about.',
  act: 'Mark it',
  sheet: {
    title: 'Marks',
    blindTitle: (code: string) => `Plate ${code}`,
    scale: '1 is poor, 5 as good as you know it.',
    taster: 'Who tastes?',
    tasterNeeded: 'Say who tastes: marks of one taster are counted once.',
    choose: 'Choose a mark from 1 to 5.',
    note: 'Note',
    noteHint: 'May stay empty.',
    save: 'Save the marks',
  },
  blind: {
    title: 'Taste by number',
    row: 'Taste by number',
    rowNote: 'without knowing the batch',
    plate: (code: string): Said =>
      said(
        'To taste without knowing: put ',
        strong(code),
        ' on the plate, and hand over the phone with this page open:',
      ),
    sentence: said('Find the ', strong('number on the plate'), '. The name of the batch stays hidden.'),
    none: said('No batch is released, so ', strong('none is offered'), ' here.'),
    plates: 'Plates',
    marked: (tasters: number) =>
      tasters === 0 ? 'not tasted by number yet' : tasters === 1 ? 'one taster' : `${tasters} tasters`,
  },
};
