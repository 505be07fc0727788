import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';

let collect: (() => void) | null = null;

/**
 * Lets the decoder take back the memory of what it gave out. It frees it only when the collector finds the result unused, and the
 * collector does not see that memory: without this, every decoded photograph of 24 megapixels leaves 72 MB behind until much later.
 * A few milliseconds: a worker's own heap is small.
 */
export async function freeDecoderMemory(): Promise<void> {
  if (collect === null) {
    setFlagsFromString('--expose-gc');
    collect = runInNewContext('gc') as () => void;
  }
  collect();
  // What was found unused is freed in a task of its own.
  await new Promise((resolve) => { setImmediate(resolve); });
}
