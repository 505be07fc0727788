import type { ImageRefusal } from '../../../app/images/image-refusal.ts';
import type { Photograph } from '../../../app/images/photograph.ts';
import type { PhotographFacts } from '../../../app/images/photograph-facts.ts';
import { ok, type Result } from '../../../app/result.ts';
import { decodePhotograph } from '../../images/decode-photograph.ts';
import type { Task } from '../task.ts';

/** The points in memory that threads share: seventy megabytes are handed on, not copied. */
function shared({ data, ...size }: Photograph): Photograph {
  const room = new SharedArrayBuffer(data.byteLength);
  const copy = data instanceof Uint8Array ? new Uint8Array(room) : new Uint16Array(room);
  copy.set(data);
  return { ...size, data: copy };
}

/** Reads a photograph for measuring: every point, upright. */
export const decodePhotographTask: Task<{ readonly bytes: Uint8Array }, Result<{ facts: PhotographFacts; photograph: Photograph }, ImageRefusal>> = {
  async run({ bytes }) {
    const decoded = await decodePhotograph(bytes);
    return decoded.ok ? ok({ facts: decoded.value.facts, photograph: shared(decoded.value.photograph) }) : decoded;
  },
};
