import { type Said, said, strong } from '#words/said.ts';

const done = {
  'fat-share': 'fat in the meat',
  diameter: 'diameter',
  casing: 'casing',
  'ferment-temperature': 'room while it fermented',
  'ferment-hours': 'length of the ferment',
  'smoke-hours': 'smoke',
  air: 'air when hung',
  humidity: 'humidity when hung',
  chamber: 'chamber',
  'target-loss': 'target loss',
};

const cameOut = {
  ph: 'last pH',
  'hours-to-stop': 'stuffing to pH 5.3, as read',
  loss: 'loss, middle piece',
  days: 'days to target weight',
  look: 'look',
  smell: 'smell',
  bite: 'bite',
  taste: 'taste',
  overall: 'overall',
};

export const compare = {
  title: 'Side by side',
  note: 'what was done otherwise, and what came of it',
  line: (name: string, lot: string) => `${name} · lot ${lot}`,
  choose: 'With which batch?',
  chooseFirst: said('Choose ', strong('another batch'), ' to lay beside this one.'),
  noOther: said('There is ', strong('no other batch'), ' to lay beside this one yet.'),
  lot: (lot: string, day: string) => `${lot}, ${day}`,
  /** What differs is named here only where it is one thing. */
  sentence: (differing: number, only: string, unwritten: number): Said => {
    const rest =
      unwritten === 0
        ? ''
        : unwritten === 1
          ? ' One more was not written down.'
          : ` ${unwritten} more were not written down.`;
    if (differing === 0)
      return said(
        'Of what was written down ',
        strong('nothing differs'),
        `: no cause to be found here.${rest}`,
      );
    if (differing === 1)
      return said(
        'Of what was written down only one thing differs: ',
        strong(only),
        `. One batch of each cannot prove that it made the difference.${rest}`,
      );
    return said(
      strong(`${differing} things differ`),
      `, so what came out cannot be put down to one of them. Change one at a time.${rest}`,
    );
  },
  differs: 'What was done otherwise',
  cameOutTitle: 'What came out',
  same: 'What was the same',
  unwritten: 'What was not written down',
  what: 'What',
  missing: 'not written',
  done,
  lotOf: (line: string) => `lot of ${line}`,
  cameOut,
  tolerance:
    'What a maker can hardly hold apart counts as the same: 2 % of a line, 0.5 °C, 2 h, 2 % of humidity, 1 mm. Our own choice.',
};
