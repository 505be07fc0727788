import { v7 } from 'uuid';
import { seededRandom } from '../../app/spectra/simulate/seeded-random.ts';

const ID_BYTES = 16;

/**
 * UUIDv7 that follow a scripted clock and one seed, so that the same scenario on the same day has the same ids.
 * They rise as long as the clock does not run back.
 */
export function createSeededIds(seed: number, now: () => Date): () => string {
  const random = seededRandom(seed);
  let lastMs = -1;
  let sequence = 0;
  return () => {
    const at = now().getTime();
    if (at > lastMs) {
      lastMs = at;
      sequence = 0;
    } else {
      sequence += 1;
    }
    return v7({ msecs: lastMs, seq: sequence, random: Uint8Array.from({ length: ID_BYTES }, () => random.below(256)) });
  };
}
