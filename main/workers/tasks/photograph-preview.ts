import type { ImageRefusal } from '../../../app/images/image-refusal.ts';
import type { PhotographFacts } from '../../../app/images/photograph-facts.ts';
import type { Result } from '../../../app/result.ts';
import { previewPhotograph } from '../../images/decode-photograph.ts';
import { buffersOf, type Task } from '../task.ts';

/** A smaller, upright JPEG of a photograph for looking at. */
export const photographPreviewTask: Task<{ readonly bytes: Uint8Array; readonly longSide: number }, Result<{ facts: PhotographFacts; jpeg: Uint8Array<ArrayBuffer> }, ImageRefusal>> = {
  run: ({ bytes, longSide }) => previewPhotograph(bytes, longSide),
  transfers: (result) => (result.ok ? buffersOf([result.value.jpeg]) : []),
};
