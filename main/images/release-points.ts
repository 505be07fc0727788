import type { Photograph } from '../../app/images/photograph.ts';

/** `ArrayBuffer.prototype.transfer` of ES2024; not yet in the language level that the program is written in. */
type Transferable = ArrayBuffer & { transfer?(length: number): ArrayBuffer };

/**
 * Gives the memory of a photograph's points back at once; the photograph can't be used any more. Left to the collector, a pair of
 * photographs lies about until something else needs room, and the next pair comes on top.
 */
export function releasePoints({ data }: Photograph): void {
  if (data.buffer instanceof ArrayBuffer) (data.buffer as Transferable).transfer?.(0);
}
