import { said, strong } from '#words/said.ts';

export const mould = {
  title: 'Mould round',
  note: 'look, answer, write down what was done',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  sentence: said('Take one piece in good light. ', strong('Three answers'), ', then what is usually done.'),
  stage: (days: number) =>
    days === 0 ? 'stuffed today' : days === 1 ? 'one day since stuffing' : `${days} days since stuffing`,
  piece: 'Which piece?',
  number: (number: number) => `${number}`,
  colour: 'What colour is it?',
  colours: {
    none: 'nothing grows',
    white: 'white',
    grey: 'grey',
    green: 'green',
    blue: 'blue',
    black: 'black',
    yellow: 'yellow',
    red: 'red or pink',
  },
  texture: 'How does it look from near?',
  textures: { powder: 'dry, like flour', fur: 'furry', slime: 'wet or slimy' },
  spread: 'How far has it spread?',
  spreads: { spots: 'a few spots', part: 'a part', all: 'all over' },
  action: 'What was done?',
  actions: {
    left: 'left alone',
    brushed: 'brushed off',
    wiped: 'wiped with vinegar or brine',
    'set-apart': 'set apart',
    'thrown-away': 'thrown away',
  },
  advice: {
    wait: said('Answer the three questions first.'),
    bare: said('Nothing to do. Look again in two days; keep the humidity where it is.'),
    bloom: said(
      'This is how a wanted bloom usually looks, ',
      strong('but nobody can name a mould by eye'),
      '. Leave it, and look again in two days.',
    ),
    early: said(
      strong('Early for a bloom'),
      '. In the first days white powder is more often salt or yeast: wet a spot with a finger, and salt is gone. Leave it, and look again in two days; nobody can name a mould by eye.',
    ),
    fur: said(
      'Long hair grows where it is too damp or the air stands still. ',
      strong('Brush it off'),
      ', and lower the humidity a little.',
    ),
    coloured: said(
      strong('Set the piece apart'),
      ' and wipe it while it is a spot. Some moulds of this colour make poisons that wiping does not take away; if it comes back or has spread, do not eat it.',
    ),
    slime: said(
      strong('Set the piece apart'),
      '. Slime is bacteria or yeast on a skin that stays wet: smell it, look at its neighbours, and do not eat it if in doubt.',
    ),
    discard: said(
      strong('Do not eat it'),
      '. Black, yellow or red growth, or colour that has spread, is a reason to throw a piece away and to look at its neighbours.',
    ),
  },
  caution:
    'By colour alone no mould can be called harmless, and this page calls none so. In doubt set it apart, and ask somebody who can test it.',
  standing: 'Common practice; no published table stands behind it.',
  save: 'Write it down',
  written: (number: number) => `What was seen on piece ${number} is on this phone.`,
  looks: 'Looked at so far',
  look: (n: { number: number; colour: string; spread: string; action: string }) =>
    `Piece ${n.number}: ${n.colour}, ${n.spread}; ${n.action}`,
  lookBare: (n: { number: number; colour: string; action: string }) =>
    `Piece ${n.number}: ${n.colour}; ${n.action}`,
  none: said('No piece hangs here.'),
};
