import type { Combination } from '../../app/spectra/combine-curves.ts';
import { readNumber } from '../look/read-number.ts';
import type { Scale, Together } from './drawn-curves.ts';

/** What a person chose for curves that lie over one another, as typed. */
export type TogetherChoice = { readonly scale: Scale; readonly atText: string; readonly combine: Combination | null; /** Id of the curve it is combined with; null is the first. */ readonly with: string | null };
export const AS_MEASURED: TogetherChoice = { scale: 'measured', atText: '', combine: null, with: null };

/** The choice as the drawing needs it. Values of different units can only lie over one another on scales of their own. */
export function togetherOf({ scale, atText, combine, with: id }: TogetherChoice, mustScale: boolean, laid: readonly string[]): Together {
  const at = readNumber(atText);
  return {
    scale: mustScale && scale === 'measured' ? 'range' : scale, at: at === undefined || Number.isNaN(at) ? null : at, combine,
    partner: 1 + Math.max(0, id === null ? 0 : laid.indexOf(id)),
  };
}
