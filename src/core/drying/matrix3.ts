/** Symmetric 3 x 3 matrices and what a normal distribution of three numbers needs of them. Row by row. */

export type Vector3 = readonly [number, number, number];
export type Matrix3 = readonly [Vector3, Vector3, Vector3];

/**
 * A matrix with these on its diagonal and nothing else.
 *
 * @example diagonal([1, 2, 3]) // => [[1, 0, 0], [0, 2, 0], [0, 0, 3]]
 */
export function diagonal([a, b, c]: Vector3): Matrix3 {
  return [
    [a, 0, 0],
    [0, b, 0],
    [0, 0, c],
  ];
}

/**
 * @example plus([[1, 0, 0], [0, 1, 0], [0, 0, 1]], [[1, 0, 0], [0, 2, 0], [0, 0, 3]], -1) // => [[0, 0, 0], [0, -1, 0], [0, 0, -2]]
 */
export function plus(left: Matrix3, right: Matrix3, factor = 1): Matrix3 {
  const [a, b, c] = left;
  const [d, e, f] = right;
  return [plusVector(a, d, factor), plusVector(b, e, factor), plusVector(c, f, factor)];
}

/**
 * @example plusVector([1, 2, 3], [1, 1, 1], 2) // => [3, 4, 5]
 */
export function plusVector(left: Vector3, right: Vector3, factor = 1): Vector3 {
  return [left[0] + factor * right[0], left[1] + factor * right[1], left[2] + factor * right[2]];
}

/**
 * @example dot([1, 2, 3], [4, 5, 6]) // => 32
 */
export function dot(left: Vector3, right: Vector3): number {
  return left[0] * right[0] + left[1] * right[1] + left[2] * right[2];
}

/**
 * @example apply([[1, 0, 0], [0, 2, 0], [0, 0, 3]], [1, 1, 1]) // => [1, 2, 3]
 */
export function apply(matrix: Matrix3, vector: Vector3): Vector3 {
  return [dot(matrix[0], vector), dot(matrix[1], vector), dot(matrix[2], vector)];
}

/**
 * @example times([[1, 0, 0], [0, 2, 0], [0, 0, 3]], [[2, 0, 0], [0, 2, 0], [0, 0, 2]]) // => [[2, 0, 0], [0, 4, 0], [0, 0, 6]]
 */
export function times(left: Matrix3, right: Matrix3): Matrix3 {
  const columns = transpose(right);
  return [apply(columns, left[0]), apply(columns, left[1]), apply(columns, left[2])];
}

/**
 * The inverse, by cofactors.
 *
 * @throws RangeError if there is none.
 * @example inverse([[2, 0, 0], [0, 4, 0], [0, 0, 5]]) // => [[0.5, 0, 0], [0, 0.25, 0], [0, 0, 0.2]]
 */
export function inverse(matrix: Matrix3): Matrix3 {
  const [a, b, c] = matrix;
  const cofactors: Matrix3 = [cross(b, c), cross(c, a), cross(a, b)];
  const determinant = dot(a, cofactors[0]);
  if (!(Math.abs(determinant) > 0 && Math.abs(determinant) < Infinity))
    throw new RangeError(`inverse: matrix requires a finite determinant other than 0, got ${determinant}`);
  const [d, e, f] = transpose(cofactors);
  const over = 1 / determinant;
  const none: Vector3 = [0, 0, 0];
  return [plusVector(none, d, over), plusVector(none, e, over), plusVector(none, f, over)];
}

function transpose([a, b, c]: Matrix3): Matrix3 {
  return [
    [a[0], b[0], c[0]],
    [a[1], b[1], c[1]],
    [a[2], b[2], c[2]],
  ];
}

function cross(a: Vector3, b: Vector3): Vector3 {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
