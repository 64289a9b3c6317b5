/** Small matrices and what a normal distribution of a few numbers needs of them. Row by row. */

export type Vector = readonly number[];
export type Matrix = readonly Vector[];

/**
 * A matrix with these on its diagonal and nothing else.
 *
 * @example diagonal([1, 2]) // => [[1, 0], [0, 2]]
 */
export function diagonal(values: Vector): Matrix {
  return values.map((value, row) => values.map((_, column) => (row === column ? value : 0)));
}

/**
 * @example plus([[1, 0], [0, 1]], [[1, 0], [0, 2]], -1) // => [[0, 0], [0, -1]]
 */
export function plus(left: Matrix, right: Matrix, factor = 1): Matrix {
  return left.map((row, at) => plusVector(row, right[at] ?? [], factor));
}

/**
 * @example plusVector([1, 2, 3], [1, 1, 1], 2) // => [3, 4, 5]
 */
export function plusVector(left: Vector, right: Vector, factor = 1): Vector {
  return left.map((value, at) => value + factor * (right[at] ?? 0));
}

/**
 * @example dot([1, 2, 3], [4, 5, 6]) // => 32
 */
export function dot(left: Vector, right: Vector): number {
  return left.reduce((sum, value, at) => sum + value * (right[at] ?? 0), 0);
}

/**
 * @example apply([[1, 0], [0, 2]], [1, 1]) // => [1, 2]
 */
export function apply(matrix: Matrix, vector: Vector): Vector {
  return matrix.map((row) => dot(row, vector));
}

/**
 * @example times([[1, 0], [0, 2]], [[2, 0], [0, 2]]) // => [[2, 0], [0, 4]]
 */
export function times(left: Matrix, right: Matrix): Matrix {
  const columns = right.map((_, at) => right.map((row) => row[at] ?? 0));
  return left.map((row) => apply(columns, row));
}

/**
 * All products of two vectors' parts.
 *
 * @example outer([1, 2], [1, 3]) // => [[1, 3], [2, 6]]
 */
export function outer(left: Vector, right: Vector): Matrix {
  return left.map((a) => right.map((b) => a * b));
}

/**
 * The inverse, by elimination with the largest pivot of each column.
 *
 * @throws RangeError if there is none.
 * @example inverse([[2, 0], [0, 4]]) // => [[0.5, 0], [0, 0.25]]
 */
export function inverse(matrix: Matrix): Matrix {
  const size = matrix.length;
  const rows = matrix.map((row, at) => [...row, ...row.map((_, column) => (at === column ? 1 : 0))]);
  for (let column = 0; column < size; column++) {
    const below = rows.slice(column).map((row) => Math.abs(row[column] ?? 0));
    const pivotAt = column + below.indexOf(Math.max(...below));
    const pivotRow = rows[pivotAt] ?? [];
    const pivot = pivotRow[column] ?? 0;
    if (!(Math.abs(pivot) > 0 && Math.abs(pivot) < Infinity))
      throw new RangeError(`inverse: matrix requires a finite pivot other than 0, got ${pivot}`);
    rows[pivotAt] = rows[column] ?? [];
    const one = pivotRow.map((value) => value / pivot);
    rows[column] = one;
    for (const [at, row] of rows.entries())
      if (at !== column) {
        const factor = row[column] ?? 0;
        rows[at] = row.map((value, i) => value - factor * (one[i] ?? 0));
      }
  }
  return rows.map((row) => row.slice(size));
}

/**
 * Lower root of a covariance: root · rootᵀ is the covariance. What is known for sure has a row of zeros.
 *
 * Source: Cholesky's decomposition.
 * @example lowerRoot([[4, 2], [2, 2]]) // => [[2, 0], [1, 1]]
 */
export function lowerRoot(covariance: Matrix): Matrix {
  const root = covariance.map((row) => row.map(() => 0));
  for (const [i, row] of root.entries())
    for (let j = 0; j <= i; j++) {
      const known = row.slice(0, j).reduce((sum, value, k) => sum + value * (root[j]?.[k] ?? 0), 0);
      const left = (covariance[i]?.[j] ?? 0) - known;
      const pivot = root[j]?.[j] ?? 0;
      row[j] = i === j ? Math.sqrt(Math.max(0, left)) : pivot > 0 ? left / pivot : 0;
    }
  return root;
}
