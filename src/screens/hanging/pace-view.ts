import { lossPct } from '#core/drying/loss.ts';
import type { PaceFinding, PaceReason } from '#core/drying/pace.ts';
import type { WindowScore } from '#core/drying/window-score.ts';
import type { Batch } from '#record/batch.ts';
import type { BatchAhead } from '#record/drying-batch.ts';
import type { Piece } from '#record/piece.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';
import type { Said } from '#words/said.ts';

const DAY_MS = 86_400_000;
/** With fewer windows than this a share says nothing. */
const LEAST_WINDOWS = 4;

export type Alarm = 'too-fast' | 'watch' | 'too-slow' | 'plateau';
export type PaceNotice = {
  readonly key: Alarm;
  readonly title: string;
  /** Told of the piece that stands out most. */
  readonly reasons: readonly string[];
  readonly act: Said;
  readonly after: string;
};

export type PaceView = {
  readonly notices: readonly PaceNotice[];
  readonly air: {
    readonly label: string;
    readonly value: string;
    readonly unit: string;
    readonly interval: string;
    readonly suspect: Said | null;
  } | null;
  readonly notes: readonly string[];
};

const ALARMS: readonly Alarm[] = ['too-fast', 'too-slow', 'plateau', 'watch'];

type Given = {
  batch: Batch;
  ahead: BatchAhead | null;
  score: WindowScore | null;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
};

type Found = { readonly piece: Piece; readonly pace: PaceFinding };

export function paceView(given: Given): PaceView {
  const { batch, ahead, score, words, place } = given;
  const say = words.hangingPace;
  if (ahead === null) return { notices: [], air: null, notes: [] };
  const found = ahead.pieces.flatMap(({ piece: id, pace }): Found[] => {
    const piece = batch.pieces.find((each) => each.id === id);
    return piece?.status === 'hanging' ? [{ piece, pace }] : [];
  });
  const percent = (value: number) => decimal(value, 0, place);
  return {
    notices: ALARMS.flatMap((level) => {
      const alike = found.filter(({ pace }) => pace.level === level);
      return alike.length > 0 ? [noticeOf(level, alike, found.length, given)] : [];
    }),
    air: ahead.air && {
      label: say.air.title,
      value: say.air.value(percent(ahead.air.p10Pct), percent(ahead.air.p90Pct)),
      unit: '%',
      interval: say.air.shown(percent(ahead.air.shownPct)),
      suspect: ahead.air.suspect ? say.air.suspect(ahead.air.drierFraction > ahead.air.wetterFraction) : null,
    },
    notes: [
      ahead.batches > 0 ? say.earlier(ahead.batches) : say.noEarlier,
      ...(score && score.count >= LEAST_WINDOWS
        ? [say.score({ held: Math.round(score.heldFraction * score.count), count: score.count })]
        : []),
    ],
  };
}

/** Further out of the ordinary first: the one whose loss is least likely by diameter, either way. */
function noticeOf(level: Alarm, found: readonly Found[], of: number, given: Given): PaceNotice {
  const { nowMs, zone, words } = given;
  const isSlow = level === 'too-slow' || level === 'plateau';
  const sorted = found.toSorted(
    (a, b) => ((a.pace.asMuchFraction ?? 0.5) - (b.pace.asMuchFraction ?? 0.5)) * (isSlow ? -1 : 1),
  );
  const worst = sorted[0] ?? found[0];
  if (worst === undefined) throw new RangeError('noticeOf: found requires at least one piece, got none');
  const numbers = found.map(({ piece }) => piece.number).sort((a, b) => a - b);
  const days = Math.ceil(worst.pace.dose?.days ?? (level === 'watch' ? 2 : 7));
  return {
    key: level,
    title: words.hangingPace.level[level](numbers, of),
    reasons: worst.pace.reasons.flatMap((reason) => reasonText(reason, worst, given)),
    act: actOf(level, worst.pace, days, given),
    after: words.hangingPace.after(words.dates.day(nowMs + days * DAY_MS, zone)),
  };
}

function actOf(level: Alarm, { dose }: PaceFinding, days: number, { place, words }: Given): Said {
  const say = words.hangingPace.do;
  const rh = decimal(dose?.humidityPct ?? 0, 0, place);
  switch (level) {
    case 'plateau':
      return dose ? say.plateau({ rh }) : say.accept;
    case 'too-slow':
      return dose ? say.drier({ rh }) : say.move;
    default:
      return dose ? say.damper({ rh, days: words.hangingPace.days(days) }) : say.bag;
  }
}

function reasonText(reason: PaceReason, { piece, pace }: Found, { place, words }: Given): string[] {
  const say = words.hangingPace.reason;
  const last = piece.weighings.findLast(({ netG }) => netG > 0);
  const mm = decimal(piece.diameterMm, 0, place);
  const { expected, skin, airUnderPiecePct } = pace;
  switch (reason) {
    case 'skin-gives-too-much':
      return skin
        ? [
            say[reason]({
              rate: decimal(skin.pctPerDay, 1, place),
              most: decimal(skin.mostPctPerDay, 1, place),
              mm,
            }),
          ]
        : [];
    case 'ahead-of-diameter':
    case 'behind-diameter':
      return expected && last
        ? [
            say[reason]({
              lost: decimal(lossPct({ greenG: piece.greenG, nowG: last.netG }), 1, place),
              low: decimal(expected.p10Pct, 0, place),
              high: decimal(expected.p90Pct, 0, place),
              mm,
            }),
          ]
        : [];
    case 'air-far-below-piece':
      return airUnderPiecePct === null ? [] : [say[reason]({ points: decimal(airUnderPiecePct, 0, place) })];
    default:
      return [say[reason]];
  }
}
