import { isMeat } from '#core/formula/formula.ts';
import type { Batch } from '#record/batch.ts';
import type { Head } from '#record/chain.ts';
import type { Entry } from '#record/entry.ts';
import { phBandOf } from '#record/ferment-plan.ts';
import { photos } from '#record/photo.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Lot, Place, Scale } from '#record/place.ts';
import { standings } from '#record/strikes.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';
import { type Doubted, entryText } from './entry-text.ts';
import { type Block, paginate } from './paginate.ts';
import { decisionBlocks, verdictBlocks } from './verdict-blocks.ts';

export type RecordView = {
  readonly line: string;
  readonly sentence: Said;
  readonly head: string;
  readonly made: string;
  /** The ends of the chains at the time of printing, for the foot of each sheet. */
  readonly chain: string;
  readonly sheets: readonly { key: string; blocks: readonly Block[]; foot: string }[];
};

export type Given = {
  batch: Batch;
  entries: readonly Entry[];
  heads: readonly Head[];
  /** Null while it is not known: the whole book has to be read for it. */
  doubted: Doubted | null;
  kit: { lots: readonly Lot[]; scales: readonly Scale[] };
  place: Place;
  nowMs: number;
  zone: string;
  build: string;
  words: Words;
};

/** Enough of a sum to tell it from any other by eye; the whole of it stands on the last sheet. */
const SHOWN_DIGITS = 16;

/** The whole record as sheets: the batch, what was weighed out, the rules, the pieces, every entry, the cautions. */
export function recordView(given: Given): RecordView {
  const { batch, entries, place, nowMs, zone, build, words } = given;
  const { record } = words;
  const { formula, lot } = batch.opened.body;
  const sheets = paginate(
    [
      batchBlock(given),
      linesBlock(given),
      ...verdictBlocks(given),
      ...decisionBlocks(given),
      piecesBlock(given),
      entriesBlock(given),
      photosBlock(given),
      chainBlock(given),
      cautions(given),
    ],
    place.paper,
  );
  return {
    line: record.line(formula.name, lot),
    sentence: record.sentence(entries.length, sheets.length),
    head: record.head(lot, formula.name),
    made: record.made(build, words.dates.full(nowMs, zone)),
    chain: record.chain(given.heads.map(({ hash }) => hash.slice(0, SHOWN_DIGITS)).join(' ')),
    sheets: sheets.map((blocks, at) => ({
      key: `sheet-${at + 1}`,
      blocks,
      foot: record.foot(at + 1, sheets.length, lot),
    })),
  };
}

function batchBlock({ batch, kit, place, words }: Given): Block {
  const say = words.record.batch;
  const { plan } = batch;
  const band = phBandOf(plan);
  const { body } = batch.opened;
  const grams = (massG: number) => joined(mass(massG, 1, place));
  const percent = (value: number) => `${decimal(value, 0, place)}\u00a0%`;
  const meat = (part: 'lean' | 'fat') =>
    batch.meat
      .filter((entry) => entry.body.part === part)
      .map((entry) => [grams(entry.body.massG), lotName(entry.body.lot, kit.lots, words)].join(', '))
      .join('; ') || say.none;
  const moment = (entry: { atMs: number; zone: string } | null | undefined) =>
    entry ? words.dates.full(entry.atMs, entry.zone) : say.none;
  const rows = [
    [say.formula, body.formula.name],
    [say.lot, body.lot],
    [say.rules, words.verdicts.ruleSet[body.ruleSet]],
    [say.opened, moment(batch.opened)],
    [say.lean, meat('lean')],
    [say.fat, meat('fat')],
    [
      say.plan,
      words.record.planText(
        band === null || plan.fermentC === undefined
          ? null
          : {
              at: joined(temperature(plan.fermentC, place, 0)),
              low: decimal(band.lowPh, 1, place),
              high: decimal(band.highPh, 1, place),
            },
        joined(temperature(plan.dryC, place, 0)),
        percent(plan.dryRhPct),
        `${decimal(plan.diameterMm, 0, place)}\u00a0mm`,
        percent(plan.targetLossPct),
      ),
    ],
    [say.stuffed, moment(batch.steps.filter(({ kind }) => kind === 'stuffed').at(-1))],
    [say.hung, moment(batch.hung)],
  ];
  return {
    kind: 'table',
    key: 'batch',
    title: words.record.parts.batch,
    columns: [],
    widths: [22, 78],
    rows: rows.map((cells) => ({ key: cells[0] ?? '', cells, struck: false })),
  };
}

function lotName(id: string | undefined, lots: readonly Lot[], words: Words): string {
  const lot = lots.find((each) => each.id === id)?.received.body;
  return lot ? [lot.name, lot.lot, lot.supplier].filter(Boolean).join(', ') : words.record.noLot;
}

function linesBlock({ batch, kit, place, words }: Given): Block {
  return {
    kind: 'table',
    key: 'lines',
    title: words.record.parts.weighOut,
    columns: words.record.lineColumns,
    widths: [26, 19, 19, 32],
    rows: batch.opened.body.formula.lines
      .filter(({ role }) => !isMeat(role))
      .map(({ id, name, cure }) => {
        const body = batch.weighedOut.get(id)?.body;
        const label = cure
          ? `\n${words.weighOut.cureLabel(
              words.workings.exactly(cure.nitritePct, place),
              cure.nitratePct > 0 ? words.workings.exactly(cure.nitratePct, place) : null,
            )}`
          : '';
        const stepG = kit.scales.find((scale) => scale.id === body?.scale)?.stepG ?? 0.01;
        const grams = (massG: number) => joined(mass(massG, stepG, place));
        return {
          key: id,
          cells: body
            ? [name + label, grams(body.targetG), grams(body.massG), lotName(body.lot, kit.lots, words)]
            : [name + label, '', words.record.none, ''],
          struck: false,
        };
      }),
  };
}

function piecesBlock({ batch, place, words }: Given): Block {
  const { record } = words;
  return {
    kind: 'table',
    key: 'pieces',
    title: record.parts.pieces,
    columns: record.pieceColumns,
    widths: [8, 14, 14, 14, 12, 22],
    rows: batch.pieces.map((piece) => {
      const { last, lossPct } = pieceFigures(piece);
      return {
        key: piece.id,
        cells: [
          String(piece.number),
          joined(mass(piece.greenG, 1, place)),
          `${decimal(piece.diameterMm, 0, place)}\u00a0mm`,
          last ? joined(mass(last.netG, 1, place)) : '',
          lossPct === null ? '' : `${decimal(lossPct, 1, place, 'down')}\u00a0%`,
          record.state[piece.status],
        ],
        struck: false,
      };
    }),
  };
}

function entriesBlock(given: Given): Block {
  const { record } = given.words;
  return {
    kind: 'table',
    key: 'entries',
    title: record.parts.entries,
    columns: record.entryColumns,
    widths: [24, 62, 8],
    rows: entryRows(given).map(({ key, when, what, by, struck }) => ({
      key,
      cells: [when, what, by],
      struck,
    })),
  };
}

export type EntryRow = {
  readonly key: string;
  readonly when: string;
  readonly what: string;
  readonly by: string;
  readonly struck: boolean;
};

/** Every entry of the batch, struck ones too, in the order in which they were true. */
export function entryRows({ batch, entries, doubted, kit, place, words }: Given): EntryRow[] {
  const { record } = words;
  const names = new Map<string, string>([
    ...kit.lots.map(({ id, received }): [string, string] => [
      id,
      [received.body.name, received.body.lot].filter(Boolean).join(' '),
    ]),
    ...batch.opened.body.formula.lines.map(({ id, name }): [string, string] => [id, name]),
  ]);
  const numbers = new Map(batch.pieces.map(({ id, number }): [string, string] => [id, String(number)]));
  return standings(entries).map((standing) => {
    const { when, what, by } = entryText(standing, { place, words, names, ...(doubted ? { doubted } : {}) });
    const number = standing.entry.kind === 'piece-stuffed' ? undefined : numbers.get(standing.entry.subject);
    return {
      key: standing.entry.id,
      when,
      what: number ? `${record.field('number')} ${number}, ${what}` : what,
      by,
      struck: !standing.live,
    };
  });
}

/** Each with the beginning of its sum, which its entry holds whole: the picture on paper can be told from another. */
function photosBlock({ batch, entries, words }: Given): Block {
  const numbers = new Map(batch.pieces.map(({ id, number }) => [id, number]));
  return {
    kind: 'photos',
    key: 'photos',
    title: words.record.parts.photos,
    photos: photos(entries).map(({ id, subject, atMs, zone, by, body }) => {
      const number = numbers.get(subject);
      const of = number === undefined ? words.photos.batch : words.photos.piece(number);
      const at = words.dates.full(atMs, zone);
      return {
        key: id,
        sha256: body.sha256,
        alt: words.photos.alt(of, at),
        caption: words.record.photo({ of, at, by, sum: body.sha256.slice(0, SHOWN_DIGITS) }),
      };
    }),
  };
}

function chainBlock({ heads, words }: Given): Block {
  const { record } = words;
  return {
    kind: 'text',
    key: 'chain',
    title: record.parts.chain,
    lines: [...heads.map(({ device, seq, hash }) => record.chainEnd(device, seq, hash)), record.chainNote],
  };
}

function cautions({ batch, entries, doubted, words }: Given): Block {
  const { record } = words;
  const inDoubt = entries.filter(({ id }) => doubted?.has(id)).length;
  return {
    kind: 'text',
    key: 'cautions',
    title: record.parts.cautions,
    lines: [
      ...(batch.unknown > 0 ? [record.unreadable(batch.unknown)] : []),
      ...(batch.rivals.length > 0 ? [record.rivals] : []),
      ...(doubted === null ? [words.clock.onRecord.notKnown] : []),
      ...(inDoubt > 0 ? [words.clock.onRecord.count(inDoubt)] : []),
      ...record.cautions,
      `${record.signature}: ______________________________`,
    ],
  };
}
