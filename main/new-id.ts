import { randomBytes } from 'node:crypto';
import { v7 } from 'uuid';

/**
 * A source of UUIDv7 that rise within one millisecond too, so that the order of ids is the order of making.
 * Randomness is handed to the library: it would look for a global that the main process of older Electrons does not have.
 */
export function createNewId(nowMs: () => number = Date.now): () => string {
  let lastMs = -1;
  let sequence = 0;
  return () => {
    const random = randomBytes(16);
    const now = nowMs();
    if (now > lastMs) {
      lastMs = now;
      // Half the range, so that counting up from it never runs over.
      sequence = random.readUInt32BE(6) >>> 1;
    } else {
      sequence += 1;
    }
    return v7({ msecs: lastMs, seq: sequence, random });
  };
}
