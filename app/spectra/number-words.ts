/** A number with its uncertainty, both to the place that the uncertainty carries: 736.84 ± 0.11. */
export function withUncertainty(value: number, uncertainty: number): string {
  const digits = Number.isFinite(uncertainty) && uncertainty > 0 ? Math.max(0, Math.min(3, Math.ceil(-Math.log10(uncertainty)) + 1)) : 2;
  return `${value.toFixed(digits)} ± ${uncertainty.toFixed(digits)}`;
}

/** A quantity to three figures without exponent. */
export function threeFigures(value: number): string {
  const size = Math.abs(value);
  if (size >= 100) return value.toFixed(0);
  if (size >= 10) return value.toFixed(1);
  if (size >= 1) return value.toFixed(2);
  return value.toFixed(3);
}
