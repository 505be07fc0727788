import type { InstrumentState } from '../domain/instrument-state.ts';
import { METHODS, type MethodId } from '../domain/method.ts';

/**
 * Whether the findings of a run may weigh in a conclusion. A curve counts only where its instrument is named and was in
 * order (ISO/IEC 17025:2017, 6.4.4 and 6.4.9); what a person saw with a lens or a lamp needs no instrument, but if one is
 * named it must have been in order too.
 */
export function runCounts(method: MethodId, state: InstrumentState): boolean {
  if (state === 'in-order') return true;
  return state === 'no-instrument' && METHODS[method].yields === 'observation';
}
