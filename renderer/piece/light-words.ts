import type { PhotographView } from '../../app/contract/cases.ts';

/** The light a picture was taken in, in words; a drawing was taken in none. */
export const LIGHT_WORDS: Readonly<Record<PhotographView['light'], string>> = {
  white: 'white light', 'long-wave': 'long-wave ultraviolet', 'short-wave': 'short-wave ultraviolet', polarised: 'crossed polarisers', drawing: 'drawing',
};
