import type { Place } from '#record/place.ts';
import type { Health } from '#store/health.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined } from '#words/format.ts';
import type { Said } from '#words/said.ts';

export type KeepingRow = {
  readonly label: string;
  readonly value: string;
  readonly note?: string;
  readonly amiss: boolean;
};
export type KeepingView = {
  readonly sentence: Said;
  readonly canBackUp: boolean;
  readonly rows: readonly KeepingRow[];
  /** What the checks found, the newest first. */
  readonly notices: readonly { readonly key: string; readonly text: string; readonly when: string }[];
  readonly canAsk: boolean;
};

const MOST_NOTICES = 20;

/** How the log is kept: what a backup holds, and how this phone keeps it meanwhile. */
export function keepingView({
  health,
  place,
  nowMs,
  zone,
  words,
}: {
  health: Health;
  place: Place;
  nowMs: number;
  zone: string;
  words: Words;
}): KeepingView {
  const say = words.keeping;
  const { exposure } = health;
  const last = exposure.last && words.dates.near(exposure.last.atMs, nowMs, zone);
  return {
    sentence:
      health.entries === 0
        ? say.empty
        : last === null
          ? say.never(exposure.entries)
          : exposure.entries === 0
            ? say.covered(last)
            : say.exposed(exposure.entries, last),
    canBackUp: health.entries !== 0,
    rows: healthRows(health, place, words),
    notices: [...health.notices]
      .sort((a, b) => b.atMs - a.atMs || (b.n ?? 0) - (a.n ?? 0))
      .slice(0, MOST_NOTICES)
      .map(({ n, atMs, code, count }) => ({
        key: `${n ?? atMs}`,
        text: words.start.told[code](count),
        when: words.dates.near(atMs, nowMs, zone),
      })),
    canAsk: health.persisted === false,
  };
}

function healthRows(health: Health, place: Place, words: Words): KeepingRow[] {
  const say = words.keeping.health;
  const { persisted, secondCopy, copiesPending, damaged, faults, clockSteps, usedBytes, quotaBytes, room } =
    health;
  const used = usedBytes === null ? null : sizeText(usedBytes, place, words);
  return [
    {
      label: say.copies,
      value: !secondCopy
        ? say.copiesOne
        : copiesPending > 0
          ? say.copiesBehind(copiesPending)
          : say.copiesTwo,
      note: say.copiesNote,
      amiss: !secondCopy || copiesPending > 0,
    },
    {
      label: say.persisted,
      value: persisted === null ? say.persistedUnknown : persisted ? say.persistedYes : say.persistedNo,
      ...(persisted === false ? { note: say.persistedNote } : {}),
      amiss: persisted !== true,
    },
    {
      label: say.entries,
      value: health.entries === null ? say.entriesNone : decimal(health.entries, 0, place),
      amiss: health.entries === null,
    },
    ...(damaged.length > 0
      ? [{ label: say.damaged, value: decimal(damaged.length, 0, place), amiss: true }]
      : []),
    {
      label: say.chain,
      value: faults.length === 0 ? say.chainWhole : say.chainFaults(faults.length),
      amiss: faults.length > 0,
    },
    {
      label: say.clock,
      value: clockSteps.length === 0 ? say.clockNone : say.clockSteps(clockSteps.length),
      amiss: clockSteps.length > 0,
    },
    {
      label: say.storage,
      value:
        used === null
          ? say.unknown
          : quotaBytes === null
            ? used
            : say.storageOf(used, sizeText(quotaBytes, place, words)),
      note: room === 'low' || room === 'used' ? words.start.room[room] : say.storageNote,
      amiss: room === 'low' || room === 'used',
    },
  ];
}

export function sizeText(bytes: number, place: Pick<Place, 'decimal'>, words: Words): string {
  const { size } = words.keeping;
  const units = [
    { unit: size.kB, bytes: 1e3 },
    { unit: size.MB, bytes: 1e6 },
    { unit: size.GB, bytes: 1e9 },
  ];
  const { unit, bytes: one } = units.findLast((each) => bytes >= each.bytes) ?? { unit: size.kB, bytes: 1e3 };
  const value = bytes / one;
  return joined({ value: decimal(value, value < 10 ? 1 : 0, place), unit });
}
