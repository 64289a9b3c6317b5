import { useId, useMemo } from 'react';
import { flecksPath, scatterFlecks } from './flecks.ts';
import styles from './SliceDrawing.module.css';
import { sliceStops } from './slice-stops.ts';

export type SliceDrawingProps = {
  seed: number;
  /** Water from the rim to the heart in equal steps, 0 driest to 1 wettest: how the slice is shaded. */
  waterFromRim?: readonly number[];
  label?: string;
};

const RADIUS = 46;
const MIDDLE = 50;

/** A slice: casing, meat, fat. Where the water still is the meat is paler. */
export function SliceDrawing({ seed, waterFromRim = [0], label }: SliceDrawingProps) {
  const id = useId();
  const fat = useMemo(
    () => flecksPath(scatterFlecks({ seed, count: 46, width: 100, height: 100, radius: 3.4 }), seed),
    [seed],
  );
  return (
    <svg
      className={styles.slice}
      viewBox="0 0 100 100"
      role={label ? 'img' : undefined}
      aria-label={label}
      aria-hidden={label ? undefined : true}
    >
      <clipPath id={`${id}-disc`}>
        <circle cx={MIDDLE} cy={MIDDLE} r={RADIUS} />
      </clipPath>
      <radialGradient id={`${id}-water`}>
        {sliceStops(waterFromRim).map(({ radiusShare, waterShare }) => (
          <stop
            key={radiusShare}
            offset={`${Math.round(radiusShare * 1000) / 10}%`}
            style={{
              stopColor: `color-mix(in oklab, var(--raw) ${Math.round(waterShare * 75)}%, var(--cured))`,
            }}
          />
        ))}
      </radialGradient>
      <circle cx={MIDDLE} cy={MIDDLE} r={RADIUS} fill={`url(#${id}-water)`} />
      <path className={styles.fat} clipPath={`url(#${id}-disc)`} d={fat} />
      <circle className={styles.casing} cx={MIDDLE} cy={MIDDLE} r={RADIUS} />
    </svg>
  );
}
