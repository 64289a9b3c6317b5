import { bandHours, doorOpenings, type Sample, widestSwing } from '#core/air/air-series.ts';
import { temperatureFromC } from '#core/units.ts';
import type { Batch } from '#record/batch.ts';
import type { ChamberAir } from '#record/chamber-air.ts';
import type { Place } from '#record/place.ts';
import type { FigureProps } from '#ui/Figure.tsx';
import type { Words } from '#words/en.ts';
import { decimal, joined, temperature } from '#words/format.ts';

const HOUR_MS = 3_600_000;
const WEEK_HOURS = 168;
const DAY_HOURS = 24;
/** Between readings further apart nobody knows what the air did. */
const GAP_HOURS = 26;
/** A drying chamber is expected within these of what it is set to (common practice). */
const BAND_C = 2;
const BAND_PCT = 5;

/** What the air did in the last seven days. Nothing while fewer than two readings tell of it. */
export function airQuality({
  air,
  inside,
  place,
  nowMs,
  words,
}: {
  air: ChamberAir;
  inside: readonly Batch[];
  place: Place;
  nowMs: number;
  words: Words;
}): FigureProps[] {
  const say = words.chamberAhead;
  const points = air.points.filter(({ atMs }) => atMs <= nowMs && nowMs - atMs <= WEEK_HOURS * HOUR_MS);
  if (points.length < 2) return [];
  const warmth: Sample[] = points.map(({ atMs, airC }) => ({ atMs, value: airC }));
  const damp: Sample[] = points.flatMap(({ atMs, rhPct }) =>
    rhPct === null ? [] : [{ atMs, value: rhPct }],
  );
  const setC = air.set?.body.airC ?? inside[0]?.plan.dryC;
  const setPct = air.set?.body.rhPct ?? inside[0]?.plan.dryRhPct;
  const figures: FigureProps[] = [];
  if (setC !== undefined) {
    const band = { low: setC - BAND_C, high: setC + BAND_C, gapHours: GAP_HOURS };
    const { inHours, belowHours, aboveHours } = bandHours(warmth, band);
    const knownHours = inHours + belowHours + aboveHours;
    const edges = [band.low, band.high].map((edgeC) => temperature(edgeC, place, 0).value);
    const dampShare = setPct === undefined || damp.length < 2 ? null : shareIn(damp, setPct);
    if (knownHours > 0)
      figures.push({
        label: say.inBand,
        value: decimal((100 * inHours) / knownHours, 0, place, 'down'),
        unit: '%',
        about: true,
        note: say.inBandNote({
          temp: `${edges.join(' to ')}\u00a0${temperature(0, place).unit}`,
          rh:
            dampShare === null || setPct === undefined
              ? null
              : `${decimal(100 * dampShare, 0, place, 'down')}\u00a0% within ${decimal(setPct - BAND_PCT, 0, place)} to ${decimal(setPct + BAND_PCT, 0, place)}\u00a0%`,
          known: `${decimal(Math.min(100, (100 * knownHours) / WEEK_HOURS), 0, place, 'down')}\u00a0%`,
        }),
      });
  }
  const shown = (tempC: number) => temperatureFromC({ tempC, unit: place.temperature });
  const kept = air.extremes.filter(
    ({ sinceMs, atMs }) =>
      atMs <= nowMs && nowMs - atMs <= WEEK_HOURS * HOUR_MS && atMs - sinceMs <= GAP_HOURS * HOUR_MS,
  );
  const swing = Math.max(
    widestSwing(warmth, { hours: DAY_HOURS }),
    ...kept.map(({ lowC, highC }) => (lowC === null || highC === null ? 0 : highC - lowC)),
  );
  const dampSwing =
    damp.length < 2
      ? null
      : Math.max(
          widestSwing(damp, { hours: DAY_HOURS }),
          ...kept.map(({ lowRhPct, highRhPct }) =>
            lowRhPct === null || highRhPct === null ? 0 : highRhPct - lowRhPct,
          ),
        );
  figures.push({
    label: say.swing,
    value: decimal(shown(swing) - shown(0), 1, place, 'up'),
    unit: temperature(0, place).unit,
    note: say.swingNote(
      dampSwing === null ? null : joined({ value: decimal(dampSwing, 0, place, 'up'), unit: '%' }),
    ),
  });
  const openings = doorOpenings(damp);
  const days = ((damp.at(-1)?.atMs ?? 0) - (damp[0]?.atMs ?? 0)) / (DAY_HOURS * HOUR_MS);
  if (openings && days >= 0.5)
    figures.push({
      label: say.doors,
      value: decimal(openings.length / days, 1, place),
      about: true,
      note: say.doorsNote,
    });
  return figures;
}

function shareIn(samples: readonly Sample[], setPct: number): number | null {
  const { inHours, belowHours, aboveHours } = bandHours(samples, {
    low: setPct - BAND_PCT,
    high: setPct + BAND_PCT,
    gapHours: GAP_HOURS,
  });
  const knownHours = inHours + belowHours + aboveHours;
  return knownHours > 0 ? inHours / knownHours : null;
}
