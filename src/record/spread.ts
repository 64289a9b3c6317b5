/** So many of all at most, evenly: the first of each part. */
export function spread<T>(all: readonly T[], most: number): T[] {
  return all.filter(
    (_, at) => Math.floor((at * most) / all.length) !== Math.floor(((at - 1) * most) / all.length),
  );
}
