import { z } from 'zod';

export const INSTRUMENT_STATES = ['in-order', 'lapsed', 'failed', 'never-checked', 'no-instrument'] as const;
/** How an instrument stood at an instant: judged by its newest check and the interval the house has set. */
export const instrumentState = z.enum(INSTRUMENT_STATES);
export type InstrumentState = z.infer<typeof instrumentState>;

export const INSTRUMENT_STATE_WORDS: Readonly<Record<InstrumentState, string>> = {
  'in-order': 'in order',
  lapsed: 'check lapsed',
  failed: 'last check failed',
  'never-checked': 'never checked',
  'no-instrument': 'no instrument named',
};
