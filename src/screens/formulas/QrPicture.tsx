import styles from './ShareSheet.module.css';

/** Light around the code, in modules, without which no camera finds it (ISO/IEC 18004). */
const QUIET = 4;

/** A code to scan, always dark on light whatever the theme. */
export function QrPicture({ modules, label }: { modules: readonly (readonly boolean[])[]; label: string }) {
  const size = modules.length + 2 * QUIET;
  const path = modules
    .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x + QUIET} ${y + QUIET}h1v1h-1z` : '')))
    .join('');
  return (
    <svg
      className={styles.qr}
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={path} fill="#000" />
    </svg>
  );
}
