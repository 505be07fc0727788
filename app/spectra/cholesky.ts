/** In-place Cholesky of the lower triangle of a p×p row-major matrix; false where it is not positive definite. */
export function cholesky(a: Float64Array, p: number): boolean {
  for (let j = 0; j < p; j++) {
    const row = j * p;
    let d = a[row + j]!;
    const original = d;
    for (let k = 0; k < j; k++) d -= a[row + k]! * a[row + k]!;
    if (!(d > original * 1e-15)) return false;
    const root = Math.sqrt(d);
    a[row + j] = root;
    for (let i = j + 1; i < p; i++) {
      const at = i * p;
      let s = a[at + j]!;
      for (let k = 0; k < j; k++) s -= a[at + k]! * a[row + k]!;
      a[at + j] = s / root;
    }
  }
  return true;
}

/** Solves L Lᵀ x = b in place, L from `cholesky`. */
export function choleskySolve(l: Float64Array, p: number, b: Float64Array): void {
  for (let i = 0; i < p; i++) {
    let s = b[i]!;
    for (let k = 0; k < i; k++) s -= l[i * p + k]! * b[k]!;
    b[i] = s / l[i * p + i]!;
  }
  for (let i = p - 1; i >= 0; i--) {
    let s = b[i]!;
    for (let k = i + 1; k < p; k++) s -= l[k * p + i]! * b[k]!;
    b[i] = s / l[i * p + i]!;
  }
}
