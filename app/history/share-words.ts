import type { Share } from './figures-over-time.ts';

/** A share in per cent with as many digits as its size needs: "3.8 %", "0.04 %". */
export function perCent(share: number): string {
  const value = share * 100;
  if (value === 0 || value === 100) return `${value} %`;
  // What is neither none nor all is never rounded to it.
  if (value < 0.005) return 'below 0.01 %';
  if (value >= 99.995) return 'above 99.99 %';
  return `${value.toFixed(value >= 99.5 ? 2 : value >= 10 ? 0 : value >= 0.1 ? 1 : 2)} %`;
}

/** "3 of 50 (6.0 %; 1.3 to 17 % with 95 % confidence)": never a share without its count; "0 of 0" says that there was nothing to count. */
export function shareWords({ count, of, limits }: Share): string {
  if (of === 0) return 'none counted';
  return `${count.toLocaleString('en')} of ${of.toLocaleString('en')} (${perCent(count / of)}; ${perCent(limits.low).replace(/ %$/, '')} to ${perCent(limits.high)})`;
}
