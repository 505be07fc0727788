import type { ExifFacts } from './exif.ts';

export type Exposure = { readonly seconds: number | null; readonly fNumber: number | null; readonly iso: number | null };

export const exposureOf = ({ exposureSeconds, fNumber, iso }: ExifFacts): Exposure => ({ seconds: exposureSeconds, fNumber, iso });

/**
 * By how many stops the second photograph was exposed more than the first: log2 of t·S/N² of both (ISO 12232, ISO 2720).
 * A part that neither states is taken as the same in both; null where only one states it, or neither states the time.
 */
export function exposureStops(first: Exposure, second: Exposure): number | null {
  if (first.seconds === null || second.seconds === null) return null;
  if ((first.fNumber === null) !== (second.fNumber === null) || (first.iso === null) !== (second.iso === null)) return null;
  const gain = ({ seconds, fNumber, iso }: Exposure): number => Math.log2(seconds! * (iso ?? 1) / (fNumber ?? 1) ** 2);
  return gain(second) - gain(first);
}
