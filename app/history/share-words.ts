import type { Share } from './figures-over-time.ts';

/** A share in per cent with as many digits as its size needs: "3.8 %", "0.04 %". */
export function perCent(share: number): string {
  const value = share * 100;
  return `${value === 0 || value === 100 ? String(value) : value.toFixed(value >= 10 ? 0 : value >= 0.1 ? 1 : 2)} %`;
}

/** "3 of 50 (6.0 %; 1.3 to 17 % with 95 % confidence)": never a share without its count; "0 of 0" says that there was nothing to count. */
export function shareWords({ count, of, limits }: Share): string {
  if (of === 0) return 'none counted';
  return `${count.toLocaleString('en')} of ${of.toLocaleString('en')} (${perCent(count / of)}; ${perCent(limits.low).replace(/ %$/, '')} to ${perCent(limits.high)})`;
}
