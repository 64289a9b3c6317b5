import type { Batch } from '#record/batch.ts';
import type { BatchAhead, BatchWindow } from '#record/drying-batch.ts';
import type { Piece } from '#record/piece.ts';
import { pieceFigures } from '#record/piece-figures.ts';
import type { Place } from '#record/place.ts';
import type { RailPiece } from '#ui/drawings/RailDrawing.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, mass } from '#words/format.ts';
import { type Said, said } from '#words/said.ts';
import { lossChart } from './loss-chart.ts';

type Given = {
  batch: Batch;
  /** Null while it is worked out, or where nothing can be expected. */
  ahead: BatchAhead | null;
  /** True while another thread works it out. */
  working: boolean;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};

const FIRST_DAY_MS = 86_400_000;

export type HangingView = {
  readonly line: string;
  readonly sentence: Said;
  readonly rail: readonly RailPiece[];
  readonly railLabel: string;
  readonly chart: ReturnType<typeof lossChart>;
  readonly figures: readonly {
    key: string;
    label: string;
    value: string;
    unit?: string;
    about?: boolean;
    interval?: string;
  }[];
  readonly atTarget: readonly Piece[];
  readonly canWeigh: boolean;
};

export function hangingView(given: Given): HangingView {
  const { batch, words, nowMs, zone } = given;
  const { body } = batch.opened;
  const up = batch.pieces.filter(({ status }) => status !== 'taken-down');
  const atTarget = up.filter((piece) => pieceFigures(piece).atTarget);
  const day = words.dates.dayCount(batch.stuffedAtMs ?? batch.opened.atMs, nowMs, zone);
  return {
    line: words.hanging.line(body.formula.name, body.lot, day),
    sentence: sentenceOf(given, up, atTarget),
    rail: batch.pieces.map((piece) => railPiece(piece, given)),
    railLabel: words.hanging.rail(batch.pieces.length),
    chart: lossChart(given),
    figures: figuresOf(given, up),
    atTarget,
    canWeigh: batch.hung !== null && up.length > 0,
  };
}

function sentenceOf(given: Given, up: readonly Piece[], atTarget: readonly Piece[]): Said {
  const { batch, ahead, words } = given;
  const { sentence } = words.hanging;
  if (batch.pieces.length === 0) return sentence.noPieces;
  if (batch.hung === null) return sentence.notHung;
  if (up.length === 0) return sentence.down;
  if (atTarget.length > 0) return sentence.atTarget(atTarget.length, up.length);
  const fast = ahead?.pieces.filter(({ pace }) => pace.level === 'too-fast').length ?? 0;
  if (fast > 0) return sentence.tooFast(fast, up.length);
  if (ahead === null) return given.working ? sentence.working(up.length) : sentence.open;
  const window = words.hanging.window(ahead.first, given);
  if (!window) return sentence.open;
  const weighed = up.some((piece) => pieceFigures(piece).last !== null);
  const base = weighed ? sentence.onCourse(up.length, window) : sentence.noneWeighed(window);
  if (isFirstEvening(given, up)) return said(...base, { text: ' ' }, ...sentence.firstEvening);
  const never = ahead.all.neverFraction;
  return never > 0.1
    ? said(...base, { text: ' ' }, ...sentence.never(chanceText(never, given.place), up.length))
    : base;
}

/** Hung less than a day ago, and not weighed on the rail since: half a day shows most of how hard the air draws. */
function isFirstEvening({ batch, nowMs }: Given, up: readonly Piece[]): boolean {
  const hungMs = batch.hung?.atMs ?? nowMs;
  const lastMs = Math.max(...up.map(({ weighings }) => weighings.at(-1)?.atMs ?? 0));
  return nowMs - hungMs < FIRST_DAY_MS && lastMs < hungMs + FIRST_DAY_MS / 4;
}

/** A chance to the nearest 5 %: more would pretend to know. */
function chanceText(fraction: number, place: Place): string {
  return `${decimal(Math.round(fraction * 20) * 5, 0, place)}\u00a0%`;
}

/** About what a stuffed mix weighs: only to draw the piece as long as it is. Common practice: 1.05 g/ml. */
const DENSITY_G_PER_MM3 = 1.05e-3;

function railPiece(piece: Piece, { place, words }: Given): RailPiece {
  const { state, tag, tagDown } = words.hanging;
  const figures = pieceFigures(piece);
  const grams =
    figures.gramsToGoG === null ? null : joined(mass(Math.max(0, figures.gramsToGoG), 1, place, 'up'));
  const down = piece.status === 'taken-down';
  const bagged = piece.status === 'bagged';
  const text = down
    ? state.down
    : bagged
      ? state.bagged
      : figures.atTarget
        ? state.atTarget
        : grams === null
          ? state.unweighed
          : state.toGo(grams);
  return {
    id: piece.id,
    number: String(piece.number),
    toGo: down || figures.atTarget ? '' : (grams ?? ''),
    label: words.hanging.piece(piece.number, text),
    href: `#/pieces/${piece.id.slice('piece:'.length)}`,
    diameterMm: piece.diameterMm,
    lengthMm: piece.greenG / DENSITY_G_PER_MM3 / ((Math.PI / 4) * piece.diameterMm ** 2),
    lossFraction: figures.lossPct === null ? null : Math.max(0, figures.lossPct / 100),
    targetFraction: piece.targetLossPct / 100,
    seed: piece.number,
    ...(down ? { tag: tagDown } : figures.atTarget ? { tag } : {}),
  };
}

function figuresOf(given: Given, up: readonly Piece[]): HangingView['figures'] {
  const { ahead, place, nowMs, zone, words } = given;
  const { figures } = words.hanging;
  const weighed = up.map(pieceFigures).filter(({ last }) => last !== null);
  const middle = (values: readonly number[]) =>
    [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
  const loss = middle(weighed.flatMap(({ lossPct }) => lossPct ?? []));
  const toGo = middle(weighed.flatMap(({ gramsToGoG }) => gramsToGoG ?? []));
  const estimate = (key: string, label: string, window: BatchWindow | undefined) => {
    const interval = window && words.hanging.window(window, { nowMs, zone });
    if (!interval || (window.p50Ms !== null && window.p50Ms < nowMs)) return [];
    if (window.p50Ms === null) return [{ key, label, value: figures.unlikely, interval }];
    return [{ key, label, value: words.dates.shortDay(window.p50Ms, zone, nowMs), about: true, interval }];
  };
  return [
    ...(loss === undefined
      ? []
      : [{ key: 'loss', label: figures.loss, value: decimal(loss, 1, place, 'down'), unit: '%' }]),
    ...(toGo === undefined
      ? []
      : [{ key: 'to-go', label: figures.toGo, ...mass(Math.max(0, toGo), 1, place, 'up') }]),
    ...estimate('first', figures.first, ahead?.first),
    ...(up.length > 1 ? estimate('last', figures.last, ahead?.all) : []),
  ];
}
