import type { Batch } from '#record/batch.ts';
import { type CameOut, compareBatches, type Done, type Written } from '#record/batch-compare.ts';
import type { Chamber, Lot, Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type Line = {
  readonly key: string;
  readonly label: string;
  readonly one: string;
  readonly two: string;
};

export type CompareView = {
  readonly sentence: Said;
  readonly heads: readonly [one: string, two: string];
  readonly differs: readonly Line[];
  readonly cameOut: readonly Line[];
  readonly same: readonly Line[];
  readonly unwritten: readonly Line[];
};

type Known = {
  readonly place: Place;
  readonly lots: readonly Lot[];
  readonly chambers: readonly Chamber[];
  readonly words: Words;
};

/** Those that may lie beside it: of the same formula first, then the last opened. */
export function others(batch: Batch, batches: readonly Batch[]): Batch[] {
  const name = (of: Batch) => of.opened.body.formula.name;
  const rest = batches.filter(({ id, stuffedAtMs }) => id !== batch.id && stuffedAtMs !== null);
  return [
    ...rest.filter((each) => name(each) === name(batch)),
    ...rest.filter((each) => name(each) !== name(batch)),
  ];
}

export function compareView(one: Batch, two: Batch, nowMs: number, known: Known): CompareView {
  const say = known.words.compare;
  const { done, cameOut, differing, unknown } = compareBatches(one, two, nowMs);
  const lines = (differs: Done['differs']) =>
    done.filter((each) => each.differs === differs).map((each) => doneLine(each, known));
  const differs = lines(true);
  return {
    sentence: say.sentence(differing, differs[0]?.label ?? '', unknown),
    heads: [one.opened.body.lot, two.opened.body.lot],
    differs,
    same: lines(false),
    unwritten: lines(null),
    cameOut: cameOut
      .filter((each) => each.one !== null || each.two !== null)
      .map((each) => outLine(each, known)),
  };
}

function doneLine({ code, name, one, two }: Done, known: Known): Line {
  const say = known.words.compare;
  const label = code === 'line' ? name : code === 'lot' ? say.lotOf(name) : say.done[code];
  const text = (value: Written) => doneText(code, value, known);
  return { key: `${code} ${name}`, label, one: text(one), two: text(two) };
}

function doneText(code: Done['code'], value: Written, { place, lots, chambers, words }: Known): string {
  if (value === null) return words.compare.missing;
  if (typeof value === 'string') {
    if (code === 'lot')
      return lots.find(({ id }) => id === value)?.received.body.lot ?? words.compare.missing;
    if (code === 'chamber') return chambers.find(({ id }) => id === value)?.name ?? words.compare.missing;
    return value;
  }
  switch (code) {
    case 'ferment-temperature':
    case 'air':
      return joined(temperature(value, place));
    case 'ferment-hours':
    case 'smoke-hours':
      return `${decimal(value, 1, place)}\u00a0h`;
    case 'diameter':
      return `${decimal(value, 0, place)}\u00a0mm`;
    case 'line':
      return `${decimal(value, 2, place)}\u00a0%`;
    default:
      return `${decimal(value, 1, place)}\u00a0%`;
  }
}

function outLine({ code, one, two }: CameOut, { place, words }: Known): Line {
  const text = (value: number | null) =>
    value === null ? words.compare.missing : outText(code, value, place);
  return { key: code, label: words.compare.cameOut[code], one: text(one), two: text(two) };
}

function outText(code: CameOut['code'], value: number, place: Place): string {
  if (code === 'ph') return decimal(value, 2, place);
  if (code === 'hours-to-stop') return `${decimal(value, 1, place)}\u00a0h`;
  if (code === 'loss') return `${decimal(value, 1, place)}\u00a0%`;
  return decimal(value, Number.isInteger(value) ? 0 : 1, place);
}
