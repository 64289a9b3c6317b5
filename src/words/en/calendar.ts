import { type Said, said, strong } from '#words/said.ts';
import { today } from './today.ts';

export const calendar = {
  title: today.ways.calendar.title,
  none: said('No batch hangs yet. From a wished date the app can count back to the day to begin.'),
  sentence: (count: number, next: string | null): Said =>
    next === null
      ? said(strong(count === 1 ? 'One batch' : `${count} batches`), ' on the rails.')
      : said(
          strong(count === 1 ? 'One batch' : `${count} batches`),
          ' on the rails; the next should be at target weight ',
          strong(next),
          '.',
        ),
  working: (count: number): Said =>
    said(
      strong(count === 1 ? 'One batch' : `${count} batches`),
      ' on the rails; when the next should be at target weight is being worked out.',
    ),
  failed: 'When they should be at target could not be worked out on this phone.',
  rows: 'On the rails',
  legend:
    'Solid: hanging so far. Hatched: from when the first piece may be at target (10 %) until all should be (90 %). An estimate.',
  row: (n: { pieces: number; chamber: string | null; window: string }) =>
    [`${n.pieces} ${n.pieces === 1 ? 'piece' : 'pieces'}`, n.chamber, n.window].filter(Boolean).join(' · '),
  ferments: 'ferments',
  rails: {
    title: 'Room on the rails',
    taken: (n: { now: number; places: number }) => `${n.now} of ${n.places} places taken now`,
    unknown: (now: number) =>
      `${now === 1 ? 'one piece hangs' : `${now} pieces hang`}; say at the chamber how many places a rail has, and a clash is seen`,
    clashes: (name: string): Said => said(' ', strong(`${name} is booked twice`), '.'),
    clash: (n: { over: number; from: string | null; last: string; room: string | null }): Said =>
      said(
        strong(
          `${n.over === 1 ? 'One piece' : `${n.over} pieces`} too many ${n.from === null ? 'now' : `from ${n.from}`}`,
        ),
        n.room === null
          ? `: all of ${n.last} never fits here.`
          : `: for all of ${n.last} there is room from ${n.room}.`,
      ),
    legend: 'How full the rails are, by forecasts. A clash stands out by its outline and is said in words.',
  },
  open: 'no end in sight at this humidity',
  atTarget: 'at target weight',
  window: (window: string) => `at target ${window}`,
  /** `first` null where some are there already; `all` null where not all may ever be. */
  windows: (first: string | null, all: string | null) =>
    [
      first === null ? 'some at target weight' : `first at target ${first}`,
      all === null ? 'not all at this humidity' : `all ${all}`,
    ].join(', '),
  windowWorking: 'when the first and when all should be at target is being worked out',
  today: 'today',
  away: 'away',
  export: 'To the phone’s calendar',
  exported: 'Handed over. A web app cannot promise an alarm: the phone’s calendar can.',
  notExported: 'Nothing was handed over.',
  event: {
    window: (name: string, lot: string) => `${name}, lot ${lot}: may be at target weight from today`,
    note: (window: string) => `Expected ${window}: an estimate. Weigh it.`,
    round: (name: string, lot: string) => `Weigh round: ${name}, lot ${lot}`,
    halfDay: (name: string, lot: string) => `Weigh round, half a day after hanging: ${name}, lot ${lot}`,
    halfDayNote: 'The first half day shows a rim that dries too fast.',
    ph: (name: string, lot: string) => `Read the pH: ${name}, lot ${lot}`,
    runsOut: (name: string, lot: string) =>
      `Degree-hours run out at the last temperature: ${name}, lot ${lot}`,
    runsOutNote: 'Counted on from the last readings: read the room and the pH before.',
    air: (name: string) => `Read the air of ${name}`,
    leave: 'You leave the workshop: weigh, fill, set',
    back: 'Back at the workshop: weigh, and compare with what was expected',
    frozen: (name: string, lot: string) =>
      `Freezing time of ${name}, lot ${lot}, is over if every reading held`,
    frozenNote: 'Read the freezer, then decide. It speaks of Trichinella only.',
    plan: {
      freeze: 'Into the freezer',
      thaw: 'Out of the freezer',
      stuff: 'Stuff',
      hang: 'Hang it to dry',
      down: 'Take it down, as likely as not',
      ready: 'The wished date',
    },
    planNote: (date: string) => `Counted back from ${date}: an estimate, no date makes a sausage ready.`,
  },
  back: {
    title: 'Ready by a date',
    date: 'To be ready on',
    diameter: 'Diameter as stuffed',
    target: 'Target loss',
    humidity: 'Humidity it will dry in',
    freeze: 'Freeze the pork first?',
    freezeNo: 'no',
    freezeYes: (days: number, at: string) => `${days} days at ${at}`,
    freezeNote:
      'Days of the table of your rule set for pork up to 15 cm thick. It speaks of Trichinella only, and not of game.',
    lot: 'How much, and where',
    pieces: 'Pieces',
    weight: 'Fresh sausage',
    lotHint: 'May stay empty; with it room and water are looked at too.',
    chamber: 'Where it will dry',
    room: {
      title: 'Room for it',
      free: (n: { name: string; free: string; places: string }): Said =>
        said(`${n.name} has ${n.free} of ${n.places} places free from then on: enough.`),
      short: (n: {
        name: string;
        free: string;
        places: string;
        hang: string;
        later: { from: string; ready: string } | null;
      }): Said =>
        said(
          strong(
            n.free === '0'
              ? `None of ${n.places} places is free`
              : `Only ${n.free} of ${n.places} places are free`,
          ),
          ` in ${n.name} from ${n.hang} on. `,
          n.later === null
            ? 'There never are so many.'
            : `Hung on ${n.later.from} it has room, and is as likely as not ready on ${n.later.ready}.`,
        ),
      carries: (n: { name: string; water: string; most: string }): Said =>
        said(
          `Its water, ${n.water} a day with what hangs then, is no more than ${n.name} has carried (${n.most}).`,
        ),
      tooWet: (n: { name: string; water: string; most: string }): Said =>
        said(
          strong(`${n.water} of water a day`),
          ` with what hangs then; ${n.name} never carried more than ${n.most}: watch the humidity, or make less.`,
        ),
    },
    history: (n: { batches: number; by: string; way: 'longer' | 'shorter' | 'same' }): string =>
      `Counted with ${n.batches === 1 ? 'one batch' : `${n.batches} batches`} of your own: drying takes ${
        n.way === 'same'
          ? 'about as long as diameter, mix and air alone say'
          : `~${n.by} ${n.way} than diameter, mix and air alone say`
      }.`,
    act: 'Count back',
    working: 'The days are being worked out, with what hangs already.',
    failed: 'The days could not be worked out. Nothing is lost.',
    pass: 'These days to the phone’s calendar',
    badDate: 'Choose a day that is still to come.',
    sentence: (n: { likely: string; early: string | null; last: string | null }): Said =>
      said(
        'Begin by ',
        strong(n.likely),
        ' and it is as likely as not ready.',
        ...(n.early === null ? [] : [' To be nearly sure, by ', strong(n.early), '.']),
        ...(n.last === null ? [] : [` The last chance is ${n.last}.`]),
      ),
    passed: (n: { likely: string; last: string | null }): Said =>
      said(
        strong('As planned it will hardly be ready'),
        `: it should have begun by ${n.likely}`,
        n.last === null ? '.' : `, and the last chance is ${n.last}.`,
      ),
    never: said(
      'In this air it is not likely ever to reach that target: choose drier air or a lower target.',
    ),
    rows: { early: 'Nearly sure', likely: 'As likely as not', last: 'Last chance' },
    rowNote: { early: 'nine in ten are ready', likely: 'one in two', last: 'one in ten' },
    steps: (n: { freeze: string | null; thaw: string | null; stuff: string; hang: string; down: string }) =>
      [
        n.freeze && `into the freezer ${n.freeze}`,
        n.thaw && `out of it ${n.thaw}`,
        `stuff ${n.stuff}`,
        `hang ${n.hang}`,
        `take down ${n.down}`,
      ]
        .filter(Boolean)
        .join(', '),
    still: 'What would still make it',
    thinner: (mm: string) => `a casing of ${mm} instead`,
    fewer: (count: string) => `a smaller lot: ${count} pieces, for which there are places`,
    lighter: (weight: string) =>
      `a smaller lot: ${weight}, the water of which this chamber has carried before`,
    lower: (loss: string) => `a target loss of ${loss} instead`,
    nothing: 'Neither a thinner casing nor a lower target alone makes it in time.',
    counted: (n: { ferment: number; equalise: number; air: string }) =>
      `Counted with ${n.ferment} days of ferment, ${n.equalise} days to even out, and air of ${n.air}. Drying is an estimate: no verdict rests on it, and no date makes a sausage ready.`,
  },
};
