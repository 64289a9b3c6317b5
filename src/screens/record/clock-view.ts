import { aboutMs, type ClockDoubt, type ClockSide, clockDoubts, doubted } from '#record/clock-steps.ts';
import type { Entry, EntryId } from '#record/entry.ts';
import { clockCorrections } from '#record/put-right.ts';
import { standings } from '#record/strikes.ts';
import type { SubjectId } from '#record/subject.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';

export type CorrectionRow = {
  readonly key: EntryId;
  readonly subject: SubjectId;
  readonly title: string;
  readonly note: string;
  readonly struck: boolean;
};
export type ClockView = {
  readonly sentence: Said;
  readonly doubts: readonly {
    readonly key: string;
    readonly text: string;
    readonly sides: readonly { key: string; title: string; note: string; side: ClockSide }[];
  }[];
  readonly corrections: readonly CorrectionRow[];
  /** Every phone that wrote, the one at hand first. */
  readonly phones: readonly { readonly value: string; readonly label: string }[];
};

type Given = {
  /** All there are, put right. */
  readonly entries: readonly Entry[];
  readonly device: string | null;
  readonly nowMs: number;
  readonly words: Words;
};

const SHOWN_DIGITS = 4;

/** Where the clock of a phone went back, what may be put right, and what was. */
export function clockView(given: Given): ClockView {
  const { entries, nowMs, words } = given;
  const doubts = clockDoubts(entries, nowMs);
  const count = doubted(entries, doubts).size;
  return {
    sentence: doubts.length === 0 ? words.clock.none : words.clock.open(doubts.length, count),
    doubts: doubts.toSorted((a, b) => b.backMs - a.backMs).map((doubt) => doubtView(doubt, given)),
    corrections: correctionRows(given),
    phones: [...new Set(entries.map((entry) => entry.device))]
      .sort((a, b) => Number(b === given.device) - Number(a === given.device) || (a < b ? -1 : 1))
      .map((value) => ({ value, label: phoneName(value, given) })),
  };
}

export function phoneName(device: string, { device: own, words }: Pick<Given, 'device' | 'words'>): string {
  return device === own ? words.clock.thisPhone : words.clock.phone(device.slice(-SHOWN_DIGITS));
}

function doubtView({ backMs, sides, told }: ClockDoubt, given: Given): ClockView['doubts'][number] {
  const { entries, words } = given;
  const say = words.clock;
  const [likely] = sides;
  const full = (entry: Entry) => words.dates.full(entry.writtenAtMs, entry.zone);
  return {
    key: `${likely.device} ${likely.first.seq} ${likely.last.seq}`,
    text: say.step(phoneName(likely.device, given), backMs, told),
    sides: sides.map((side, at) => {
      const { device, first, last } = side;
      const count = entries.filter(
        ({ device: of, seq }) => of === device && first.seq <= seq && seq <= last.seq,
      ).length;
      const isBounded = side.leastMs !== null && side.mostMs !== null;
      const title = say.side[side.side](count, isBounded ? aboutMs(side) : null);
      return {
        key: side.side,
        title: told && at === 0 ? `${title} (${say.likely})` : title,
        note: say.range(first.seq, last.seq, full(first), full(last)),
        side,
      };
    }),
  };
}

/** The newest first; struck ones stay visible. */
function correctionRows(given: Given): CorrectionRow[] {
  const { entries, words } = given;
  const say = words.clock;
  const standing = clockCorrections(entries);
  return standings(entries.filter(({ subject }) => subject.startsWith('device:')))
    .flatMap(({ entry, struckBy, live }): CorrectionRow[] => {
      if (entry.kind !== 'clock-corrected') return [];
      const { device, fromSeq, toSeq, shiftMs, reason } = entry.body;
      const place = standing.findIndex(({ id }) => id === entry.id);
      const isOutdone =
        live &&
        standing
          .slice(place + 1)
          .some(({ body }) => body.device === device && body.fromSeq <= toSeq && fromSeq <= body.toSeq);
      return [
        {
          key: entry.id,
          subject: entry.subject,
          title: say.correction(phoneName(device, given), fromSeq, toSeq, shiftMs),
          note: [
            say.correctionNote(entry.by, words.dates.full(entry.writtenAtMs, entry.zone), reason),
            ...(isOutdone ? [say.rival] : []),
            ...struckBy.map((striker) =>
              words.record.struck(
                striker.strikes?.reason ?? '',
                striker.by,
                words.dates.full(striker.writtenAtMs, striker.zone),
              ),
            ),
          ].join('\n'),
          struck: !live,
        },
      ];
    })
    .reverse();
}
