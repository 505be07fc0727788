/** Shortest decimal that reads back as the same number. */
export function formatNumber(value: number): string {
  return Object.is(value, -0) ? '0' : String(value);
}
