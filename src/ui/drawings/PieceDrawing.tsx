import { useId, useMemo } from 'react';
import { flecksPath, scatterFlecks } from './flecks.ts';
import styles from './PieceDrawing.module.css';
import { filledShare, type PieceBox, pieceBoxes, pieceOutline, pieceTies, SLOT } from './piece-shape.ts';
import { xy } from './round.ts';

export type PieceLook = {
  diameterMm: number;
  lengthMm: number;
  /** Null where it was not weighed since it was hung: no red at all. */
  lossFraction: number | null;
  targetFraction: number;
  /** Gives the piece its own flecks. */
  seed: number;
  /** Word on the piece, such as that it is at target weight. Seen only: `label` says it aloud. */
  tag?: string;
  /** Dries apart from the others: its outline is broken. */
  outlier?: boolean;
};

export type PieceDrawingProps = PieceLook & {
  /** What the picture shows, for those who do not see it. Left out where the words beside it say the same. */
  label?: string;
  /** Its room among others, from `pieceBoxes`; alone it is drawn as large as it fits. */
  box?: PieceBox;
  /** Height of the picture in its view box, where several stand side by side. */
  depth?: number;
};

/** One piece on its string. Cured red rises in it as it dries towards its target. */
export function PieceDrawing(props: PieceDrawingProps) {
  const { lossFraction, targetFraction, seed, tag, outlier = false, label } = props;
  const id = useId();
  const box = props.box ?? pieceBoxes([props])[0] ?? { width: SLOT.width, height: SLOT.width };
  const depth = props.depth ?? SLOT.string + box.height + SLOT.tail;
  const filled = lossFraction === null ? 0 : filledShare({ lossFraction, targetFraction });
  const level = box.height * (1 - filled);
  const outline = pieceOutline(box);
  const { width, height } = box;
  const flecks = useMemo(
    () =>
      flecksPath(
        scatterFlecks({ seed, count: Math.round((width * height) / 110), width, height, radius: 2 }),
        seed,
      ),
    [seed, width, height],
  );
  return (
    <span className={styles.frame}>
      <svg
        className={styles.picture}
        viewBox={`0 0 ${SLOT.width} ${xy(depth)}`}
        role={label ? 'img' : undefined}
        aria-label={label}
        aria-hidden={label ? undefined : true}
      >
        <clipPath id={`${id}-all`}>
          <path d={outline} />
        </clipPath>
        <clipPath id={`${id}-red`}>
          <rect x="0" y={xy(level)} width={xy(box.width)} height={xy(box.height - level)} />
        </clipPath>
        <path
          className={styles.string}
          d={`M${SLOT.width / 2} 0c-5 5 5 7 1 12s-3 6-1 ${xy(SLOT.string - 12)}`}
        />
        <g transform={`translate(${xy((SLOT.width - box.width) / 2)} ${SLOT.string})`}>
          <g clipPath={`url(#${id}-all)`}>
            <rect className={styles.raw} width={xy(box.width)} height={xy(box.height)} />
            <path className={styles.pale} d={flecks} />
            <g clipPath={`url(#${id}-red)`}>
              <rect className={styles.cured} width={xy(box.width)} height={xy(box.height)} />
              <path className={styles.fat} d={flecks} />
            </g>
            <path className={styles.ties} d={pieceTies(box)} />
          </g>
          <path className={outlier ? `${styles.outline} ${styles.broken}` : styles.outline} d={outline} />
          <path
            className={styles.knots}
            d={`M${xy(box.width / 2 - 4)} 0h8M${xy(box.width / 2 - 4, box.height)}h8m-5 0l-2 5`}
          />
        </g>
      </svg>
      {tag && (
        <span className={styles.tag} aria-hidden="true">
          {tag}
        </span>
      )}
    </span>
  );
}
