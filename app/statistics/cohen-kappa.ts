/** Agreement of two persons beyond chance, with what it was computed from. */
export type Agreement = {
  readonly n: number;
  /** Share on which both said the same, 0 to 1; NaN where n is 0. */
  readonly observed: number;
  /** Share that would agree by chance, given how often each person says each thing. */
  readonly byChance: number;
  /** Null where both always said one and the same thing: kappa is then 0/0 and says nothing. */
  readonly kappa: number | null;
  /** Large-sample standard error of kappa; null with it. */
  readonly standardError: number | null;
  /** Standard error if the true kappa were 0; null with it. */
  readonly errorUnderChance: number | null;
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * Kappa of J. Cohen, Educational and Psychological Measurement 20 (1960) 37, with the standard errors of J. L. Fleiss, J. Cohen,
 * B. S. Everitt, Psychological Bulletin 72 (1969) 323. All disagreements weigh the same.
 * @param counts square table: rows what the first person said, columns what the second said, in the same order
 */
export function cohenKappa(counts: readonly (readonly number[])[]): Agreement {
  const n = sum(counts.flat());
  if (n === 0) return { n, observed: Number.NaN, byChance: Number.NaN, kappa: null, standardError: null, errorUnderChance: null };
  const share = counts.map((row) => row.map((count) => count / n));
  const rows = share.map(sum);
  const columns = share.map((_row, j) => sum(share.map((row) => row[j]!)));
  const observed = sum(share.map((row, i) => row[i]!));
  const byChance = sum(rows.map((row, i) => row * columns[i]!));
  // One cell holds everything: rounding must not turn 0/0 into a number.
  if (counts.flat().filter((count) => count > 0).length === 1 && observed > 0) return { n, observed, byChance, kappa: null, standardError: null, errorUnderChance: null };
  const kappa = (observed - byChance) / (1 - byChance);
  const onDiagonal = sum(rows.map((row, i) => share[i]![i]! * (1 - (row + columns[i]!) * (1 - kappa)) ** 2));
  const offDiagonal = (1 - kappa) ** 2 * sum(share.flatMap((row, i) => row.map((cell, j) => (i === j ? 0 : cell * (columns[i]! + rows[j]!) ** 2))));
  const variance = (onDiagonal + offDiagonal - (kappa - byChance * (1 - kappa)) ** 2) / (n * (1 - byChance) ** 2);
  const underChance = (byChance + byChance ** 2 - sum(rows.map((row, i) => row * columns[i]! * (row + columns[i]!)))) / (n * (1 - byChance) ** 2);
  return { n, observed, byChance, kappa, standardError: Math.sqrt(Math.max(0, variance)), errorUnderChance: Math.sqrt(Math.max(0, underChance)) };
}

/** Two-sided 95 % quantile of the normal distribution. */
const Z_95 = 1.959963984540054;

/** 95 % limits of kappa by its large-sample standard error, cut to what kappa can be; rough for fewer than some thirty stones. Null where kappa is not defined, or where so few stones show no spread at all. */
export function kappaLimits({ kappa, standardError }: Agreement): { readonly low: number; readonly high: number } | null {
  if (kappa === null || standardError === null || standardError === 0) return null;
  return { low: Math.max(-1, kappa - Z_95 * standardError), high: Math.min(1, kappa + Z_95 * standardError) };
}
