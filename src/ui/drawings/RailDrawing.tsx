import { PieceDrawing, type PieceLook } from './PieceDrawing.tsx';
import { pieceBoxes, SLOT } from './piece-shape.ts';
import styles from './RailDrawing.module.css';
import { railColumns } from './rail-columns.ts';

export type RailPiece = PieceLook & {
  id: string;
  /** Shown below the piece. */
  number: string;
  /** Shown below the number: how much it still has to lose. */
  toGo: string;
  /** Number, state and grams to go in words. */
  label: string;
  href?: string;
};

export type RailDrawingProps = {
  /** Says what hangs here, aloud. */
  label: string;
  pieces: readonly RailPiece[];
};

/** How many fit side by side, by width; which one holds is chosen in the style sheet. */
const FITS = [3, 4, 5, 6, 7, 9, 12] as const;

/** The rail with what hangs on it. More than fit side by side hang on further rails below. */
export function RailDrawing({ label, pieces }: RailDrawingProps) {
  const boxes = pieceBoxes(pieces);
  const depth = SLOT.string + Math.max(0, ...boxes.map((box) => box.height)) + SLOT.tail;
  const columns = Object.fromEntries(
    FITS.map((most) => [`--fit-${most}`, Math.max(1, railColumns({ count: pieces.length, most }))]),
  );
  return (
    <div className={styles.frame}>
      <ol className={styles.rail} style={columns} aria-label={label}>
        {pieces.map(({ id, number, toGo, label: words, href, ...look }, at) => {
          const box = boxes[at];
          const inside = (
            <>
              <PieceDrawing {...look} depth={depth} {...(box ? { box } : {})} />
              <span className={styles.number} aria-hidden="true">
                {number}
              </span>
              <span className={styles.toGo} aria-hidden="true">
                {toGo}
              </span>
              <span className="heard">{words}</span>
            </>
          );
          return (
            <li key={id} className={styles.place}>
              {href === undefined ? (
                <div className={styles.piece}>{inside}</div>
              ) : (
                <a className={styles.piece} href={href}>
                  {inside}
                </a>
              )}
            </li>
          );
        })}
      </ol>
    </div>
  );
}
