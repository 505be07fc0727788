import type { StoneSummary } from '../../app/contract/cases.ts';

export const STAGE_WORDS: Readonly<Record<StoneSummary['stage'], string>> = {
  open: 'open', concluded: 'second person to confirm', confirmed: 'confirmed', disagreed: 'second person disagrees',
};
