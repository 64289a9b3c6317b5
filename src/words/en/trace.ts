import { type Said, said, strong } from '#words/said.ts';

const some = (count: number, one: string, many: string) => (count === 1 ? `one ${one}` : `${count} ${many}`);

/** From a lot to every piece that it went into. */
export const trace = {
  title: 'Where it went',
  line: (name: string, lot: string) => (lot ? `${name} · lot ${lot}` : name),
  back: 'The lot',
  none: said('No entry says that any of this lot was used.'),
  sentence: (batches: number, pieces: number, here: number): Said =>
    said(
      strong(`${some(pieces, 'piece', 'pieces')} in ${some(batches, 'batch', 'batches')}`),
      here === pieces
        ? ', all of them still here.'
        : here === 0
          ? ', none of them hanging any more.'
          : `, ${here} of them still hanging.`,
    ),
  note: 'Every piece of a batch counts as made with the lot: the mix is one. Only what was entered with its lot is found; a weighing without a lot is listed on the record of its batch as missing.',
  used: (what: string, mass: string, at: string) => `${what}, ${mass}, ${at}`,
  opened: (lot: string, at: string) => `lot ${lot}, opened ${at}`,
  pieces: 'Pieces',
  noPieces: 'No piece was stuffed yet.',
  piece: (number: number) => `Piece ${number}`,
  state: {
    hanging: 'hanging',
    bagged: 'bagged',
    'taken-down': (at: string) => `taken down ${at}`,
  },
  decided: {
    release: 'released',
    hold: 'on hold',
    reject: 'rejected',
    none: 'no decision yet',
  },
  unreadable: 'Some entries cannot be read by this version, so that more may be touched than is listed.',
  otherLots: 'Other lots in it',
  csv: 'Save the list as a file',
  fileName: (lot: string) => `greenweight-trace-${lot.replace(/[^A-Za-z0-9-]+/g, '-') || 'lot'}.csv`,
  columns: ['lot', 'batch', 'batch lot', 'piece', 'green weight in g', 'state', 'decision'],
};
