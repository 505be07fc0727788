import type { ImageRefusal } from '../../../app/images/image-refusal.ts';
import type { Photograph } from '../../../app/images/photograph.ts';
import type { PhotographFacts } from '../../../app/images/photograph-facts.ts';
import type { Result } from '../../../app/result.ts';
import { decodePhotograph } from '../../images/decode-photograph.ts';
import { buffersOf, type Task } from '../task.ts';

/** Reads a photograph for measuring: every point, upright. Seventy megabytes are handed over, not copied. */
export const decodePhotographTask: Task<{ readonly bytes: Uint8Array }, Result<{ facts: PhotographFacts; photograph: Photograph }, ImageRefusal>> = {
  run: ({ bytes }) => decodePhotograph(bytes),
  transfers: (result) => (result.ok ? buffersOf([result.value.photograph.data]) : []),
};
