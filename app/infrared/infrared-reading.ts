import type { InfraredResult } from '../spectra/analysis.ts';

/** What the infrared curve says, with what the sentences need beside the stored result. */
export type InfraredReading = {
  readonly result: InfraredResult;
  readonly pathMm: number | null;
  /** Place of the platelet peak, cm-1. */
  readonly plateletCm1: number | null;
  /** Standard errors of the two hydrogen lines and the platelet peak, cm-1 base e. */
  readonly lineErrors: { readonly line3107: number; readonly line3123: number; readonly platelet: number };
  /** Whether the lattice's absorption was there: null where it was not covered. */
  readonly latticeSeen: boolean | null;
};
