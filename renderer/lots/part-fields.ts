import { formatCarat, parseCarat } from '../../app/domain/weight.ts';
import { readNumber } from '../look/read-number.ts';

/** Count and weight as they are typed. */
export type PartText = { readonly count: string; readonly weight: string };
export type PartNumbers = { readonly count: number | null; readonly weight: number | null };

export const partText = ({ count, weight }: PartNumbers): PartText => ({ count: count === null ? '' : String(count), weight: weight === null ? '' : formatCarat(weight) });

/** The numbers of a part, nothing where nothing is written; with a sentence where one can't be read. */
export function readPart({ count, weight }: PartText): PartNumbers & { readonly countError?: string; readonly weightError?: string } {
  const stones = readNumber(count);
  const carat = weight.trim() === '' ? null : parseCarat(weight);
  const wrongCount = stones !== undefined && (!Number.isInteger(stones) || stones < 0);
  return {
    count: stones === undefined || wrongCount ? null : stones, weight: carat?.ok ? carat.value : null,
    ...(wrongCount ? { countError: 'Write a whole number.' } : {}), ...(carat && !carat.ok ? { weightError: carat.error } : {}),
  };
}
