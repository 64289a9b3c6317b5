/** The dark modules of a QR code as one path: each run of a row is a bar one unit high. */
export function qrPath(modules: readonly (readonly boolean[])[]): string {
  return modules
    .map((row, y) =>
      runs(row)
        .map(({ x, length }) => `M${x} ${y}h${length}v1h-${length}z`)
        .join(''),
    )
    .join('');
}

function runs(row: readonly boolean[]): { x: number; length: number }[] {
  const found: { x: number; length: number }[] = [];
  for (const [x, dark] of row.entries()) {
    const last = found.at(-1);
    if (!dark) continue;
    if (last && last.x + last.length === x) last.length += 1;
    else found.push({ x, length: 1 });
  }
  return found;
}
