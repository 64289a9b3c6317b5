import { aboutMs, type ClockSide } from '#record/clock-steps.ts';
import type { Entry } from '#record/entry.ts';
import type { BodyOf } from '#record/kinds.ts';
import type { Place } from '#record/place.ts';
import { asWritten, rightBy, zonesBy } from '#record/put-right.ts';
import { localText, readWhen } from '#ui/when-input.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';
import { entryText } from './entry-text.ts';

/** What the maker typed. */
export type CorrectionDraft = {
  readonly device: string;
  readonly from: string;
  readonly to: string;
  readonly known: 'first' | 'last';
  readonly truth: string;
  readonly reason: string;
};
export type CorrectionField = 'from' | 'to' | 'truth' | 'reason';
export type ReadCorrection = {
  readonly problems: Partial<Record<CorrectionField, string>>;
  /** What the phone showed for the entry whose true time is asked; empty where there is none. */
  readonly shown: string;
  readonly rows: readonly { key: string; title: string; note: string }[];
  readonly more: string | null;
  readonly preview: Said | null;
  readonly notes: readonly string[];
  readonly body: BodyOf<'clock-corrected'> | null;
};

type Given = {
  readonly entries: readonly Entry[];
  readonly nowMs: number;
  readonly zoneAt: (atMs: number) => string;
  readonly place: Place;
  readonly words: Words;
};

const MINUTE_MS = 60_000;
const MOST_ROWS = 6;
const SLACK_MS = 2 * MINUTE_MS;
const NO_NAMES = new Map<string, string>();

/** As the log proposes it: nothing of it is saved before the maker has looked. */
export function proposed(side: ClockSide): CorrectionDraft {
  const { device, first, last } = side;
  const truth = localText(asWritten(first).writtenAtMs + aboutMs(side));
  return { device, from: String(first.seq), to: String(last.seq), known: 'first', truth, reason: '' };
}

export function blank(device: string): CorrectionDraft {
  return { device, from: '', to: '', known: 'first', truth: '', reason: '' };
}

export function readCorrection(draft: CorrectionDraft, given: Given): ReadCorrection {
  const { nowMs, words, zoneAt } = given;
  const say = words.clock.problem;
  const chain = given.entries.filter(({ device }) => device === draft.device).sort((a, b) => a.seq - b.seq);
  const [fromSeq, toSeq] = [numberOf(draft.from), numberOf(draft.to)];
  const reached =
    fromSeq === null || toSeq === null ? [] : chain.filter(({ seq }) => fromSeq <= seq && seq <= toSeq);
  const written = reached.map(asWritten);
  const [first] = written;
  const last = written.at(-1);
  const asked = draft.known === 'first' ? first : last;
  const truth = readWhen(draft.truth, Number.POSITIVE_INFINITY);
  const shiftMs =
    asked && truth.ok && truth.atMs !== null ? truth.atMs - wholeMinute(asked.writtenAtMs) : null;
  const zones = shiftMs === null ? undefined : zonesBy(written, { shiftMs, zoneAt });
  const change = shiftMs === null ? null : { shiftMs, ...(zones ? { zones } : {}) };
  const right = change === null ? [] : written.map((entry) => rightBy(entry, change));
  const reason = draft.reason.trim();
  const problems: ReadCorrection['problems'] = {
    ...rangeProblems({ fromSeq, toSeq, reached }, words),
    ...(first === undefined
      ? {}
      : shiftMs === null
        ? { truth: say.time }
        : shiftMs === 0
          ? { truth: say.same }
          : right.some((each) => each === null)
            ? { truth: say.impossible }
            : right.some((each) => (each?.writtenAtMs ?? 0) > nowMs)
              ? { truth: say.ahead }
              : {}),
    ...(reason === '' ? { reason: say.reason } : {}),
  };
  const holds = problems.from === undefined && problems.to === undefined && problems.truth === undefined;
  const firstRight = right[0];
  return {
    problems,
    shown: asked ? words.dates.full(asked.writtenAtMs, asked.zone) : '',
    ...rowsOf(written, given),
    preview:
      holds && change && first && firstRight
        ? words.clock.preview({
            count: written.length,
            shiftMs: change.shiftMs,
            becomes: words.dates.full(firstRight.atMs, firstRight.zone),
            showed: words.dates.full(first.writtenAtMs, first.zone),
          })
        : null,
    notes: holds && change ? notesOf({ chain, written, right, shiftMs: change.shiftMs }, words) : [],
    body:
      holds && reason !== '' && change && fromSeq !== null && toSeq !== null
        ? { device: draft.device, fromSeq, toSeq, ...change, reason }
        : null,
  };
}

function numberOf(text: string): number | null {
  return /^\s*\d{1,9}\s*$/.test(text) ? Number(text) : null;
}

function wholeMinute(atMs: number): number {
  return Math.floor(atMs / MINUTE_MS) * MINUTE_MS;
}

function rangeProblems(
  { fromSeq, toSeq, reached }: { fromSeq: number | null; toSeq: number | null; reached: readonly Entry[] },
  words: Words,
): ReadCorrection['problems'] {
  const say = words.clock.problem;
  if (fromSeq === null || toSeq === null)
    return {
      ...(fromSeq === null ? { from: say.number } : {}),
      ...(toSeq === null ? { to: say.number } : {}),
    };
  if (fromSeq > toSeq) return { to: say.order };
  if (reached.length === 0) return { from: say.nothing };
  return reached.some(({ clock }) => clock !== undefined) ? { from: say.twice } : {};
}

/** A few of either end, with their readings. */
function rowsOf(written: readonly Entry[], { place, words }: Given): Pick<ReadCorrection, 'rows' | 'more'> {
  const isLong = written.length > MOST_ROWS;
  const some = isLong ? [...written.slice(0, MOST_ROWS - 1), ...written.slice(-1)] : written;
  return {
    rows: some.map((entry) => ({
      key: entry.id,
      title: entryText({ entry, struckBy: [], live: true }, { place, words, names: NO_NAMES }).what,
      note: words.clock.shown(entry.seq, words.dates.full(entry.writtenAtMs, entry.zone)),
    })),
    more: isLong ? words.clock.more(written.length - MOST_ROWS) : null,
  };
}

type Moving = {
  readonly chain: readonly Entry[];
  readonly written: readonly Entry[];
  readonly right: readonly ReturnType<typeof rightBy>[];
  readonly shiftMs: number;
};

/** Times that the maker set by hand, and what would still lie in the wrong order. */
function notesOf({ chain, written, right, shiftMs }: Moving, words: Words): string[] {
  const stay = written.filter(({ atMs }, at) => right[at]?.atMs === atMs).length;
  const all = written.filter(({ atMs }, at) => right[at]?.atMs === atMs + shiftMs).length;
  const days = written.length - stay - all;
  const before = chain.findLast(({ seq }) => seq < (written[0]?.seq ?? 0));
  const after = chain.find(({ seq }) => seq > (written.at(-1)?.seq ?? 0));
  const line = [before, ...right, after].flatMap((each) => (each ? [each.writtenAtMs] : []));
  const steps = (timesMs: readonly number[]) =>
    timesMs.some((timeMs, at) => (timesMs[at - 1] ?? timeMs) - timeMs > SLACK_MS);
  return [
    ...(days + stay > 0 ? [words.clock.byHand(days, stay)] : []),
    ...(steps(line) ? [words.clock.outOfOrder] : []),
  ];
}
