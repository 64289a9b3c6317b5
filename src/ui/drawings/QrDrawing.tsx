import styles from './QrDrawing.module.css';
import { qrPath } from './qr-path.ts';

/** The empty rim that a camera needs to find the code: 4 modules (ISO/IEC 18004; from memory, high confidence). */
const QUIET = 4;

/** A QR code, dark on light in either theme, since many cameras read no other. `label` says where it leads. */
export function QrDrawing({ modules, label }: { modules: readonly (readonly boolean[])[]; label: string }) {
  const side = modules.length + 2 * QUIET;
  return (
    <svg
      className={styles.qr}
      viewBox={`${-QUIET} ${-QUIET} ${side} ${side}`}
      shapeRendering="crispEdges"
      role="img"
      aria-label={label}
    >
      <path className={styles.dark} d={qrPath(modules)} />
    </svg>
  );
}
