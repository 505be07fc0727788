import { formatCarat } from '../domain/weight.ts';

/** An estimated weight in words of the trade: more than three decimals of a carat would pretend. Steps of 0.0001 ct. */
export const formatEstimate = (units: number): string => formatCarat(Math.round(units / 10) * 10);

/** An estimate with its expanded uncertainty (k = 2): "0.412 ct ± 0.03 ct". `uncertainty` is the standard one. */
export const estimateText = ({ weight, uncertainty }: { readonly weight: number; readonly uncertainty: number }): string =>
  `${formatEstimate(weight)} ct ± ${formatEstimate(Math.max(10, 2 * uncertainty))} ct`;
