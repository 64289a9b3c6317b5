import type { FermentClock } from '#core/ferment/ferment-clock.ts';
import type { Batch } from '#record/batch.ts';
import type { EntryId } from '#record/entry.ts';
import { isRoomDoubted, roomHumidity, roomSeries } from '#record/ferment-figures.ts';
import { checkedAt, isBetweenFailed, thermometerOffsetC } from '#record/instruments.ts';
import type { Place } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';

/** One line of what was read; a part of a logger's file is one line. */
export type ReadingRow = {
  readonly entry: EntryId;
  readonly atMs: number;
  readonly title: string;
  readonly note: string;
};

type Given = { batch: Batch; place: Place; nowMs: number; zone: string; words: Words };

/** Newest first, with all that makes one of them doubtful. */
export function readingRows({ batch, place, nowMs, zone, words }: Given): ReadingRow[] {
  const say = words.fermentAhead.readings;
  const note = (atMs: number, ...more: (string | false | null | undefined)[]) =>
    [words.dates.near(atMs, nowMs, zone), ...more].filter(Boolean).join(', ');
  const ph = batch.ph.map(({ id, atMs, body }) => ({
    entry: id,
    atMs,
    title: say.ph(decimal(body.ph, 2, place)),
    note: note(
      atMs,
      body.sample === 'mix' && say.mix,
      body.method === 'strip' && say.strip,
      body.doubted && say.doubted,
      (body.kept?.includes('calibration-failed') ||
        (body.method === 'meter' &&
          isBetweenFailed(checkedAt(batch.checks, body.meter, 'meter-checked'), atMs))) &&
        say.meterFailed,
      body.kept?.length ? say.kept : undefined,
    ),
  }));
  const room = batch.room.map(({ id, atMs, body }) => {
    const offsetC = thermometerOffsetC(batch.checks, body.thermometer, atMs);
    const humidity = roomHumidity(batch, { atMs, body });
    const pct = (value: number) => joined({ value: decimal(value, 0, place), unit: '%' });
    return {
      entry: id,
      atMs,
      title: say.room(joined(temperature(body.roomC + offsetC, place))),
      note: note(
        atMs,
        offsetC !== 0 && say.corrected(joined(temperature(body.roomC, place))),
        humidity &&
          (humidity.offsetPct === 0
            ? say.humidity(pct(humidity.rhPct))
            : say.humidityCorrected(pct(humidity.rhPct), pct(humidity.shownRhPct))),
        humidity?.doubted && say.hygrometerFailed,
        isRoomDoubted(batch, { atMs, body }) && say.doubted,
        body.kept?.length ? say.kept : undefined,
      ),
    };
  });
  const logged = batch.logged.map(({ id, atMs, body }) => ({
    entry: id,
    atMs,
    title: say.logged(decimal(body.values.length, 0, place)),
    note: note(atMs, body.name),
  }));
  return [...ph, ...room, ...logged].sort((a, b) => b.atMs - a.atMs);
}

/** Readings that speak against each other: said, and decided by nobody but the maker. */
export function disagreements(
  batch: Batch,
  clock: FermentClock | null,
  place: Place,
  words: Words,
): string[] {
  const say = words.fermentAhead.readings;
  const shown = (tempC: number) => joined(temperature(tempC, place));
  return [
    ...roomSeries(batch)
      .disagreements.slice(0, 3)
      .map(({ handC, loggerC }) => say.disagrees(shown(handC), shown(loggerC))),
    ...(clock?.hasRisenAfterStop ? [say.risen] : []),
  ];
}
