import type { ImageRefusal } from '../../../app/images/image-refusal.ts';
import type { PhotographFacts } from '../../../app/images/photograph-facts.ts';
import type { Result } from '../../../app/result.ts';
import { readPhotographFacts } from '../../images/decode-photograph.ts';
import type { Task } from '../task.ts';

/** Reads what a photograph's file says of itself, without its points. */
export const photographFactsTask: Task<{ readonly bytes: Uint8Array }, Result<PhotographFacts, ImageRefusal>> = {
  run: ({ bytes }) => readPhotographFacts(bytes),
};
