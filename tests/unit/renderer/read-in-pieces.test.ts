import { expect, test } from 'vitest';
import { readInPieces } from '../../../renderer/read-in-pieces.ts';

const pieces = [Uint8Array.of(1, 2, 3), Uint8Array.of(4), new Uint8Array(0), Uint8Array.of(5, 6)];

const answer = (said: string | null): Response => new Response(new ReadableStream<Uint8Array>({
  start(controller) {
    for (const piece of pieces) controller.enqueue(piece);
    controller.close();
  },
}), said === null ? {} : { headers: { 'content-length': said } });

test('an answer in pieces comes whole, whether its length was said or not', async () => {
  expect(await readInPieces(answer('6'))).toStrictEqual(Uint8Array.of(1, 2, 3, 4, 5, 6));
  expect(await readInPieces(answer(null))).toStrictEqual(Uint8Array.of(1, 2, 3, 4, 5, 6));
  expect(await readInPieces(new Response(null))).toStrictEqual(new Uint8Array(0));
});

test.each(['7', '5'])('an answer that said %s bytes and brought six is refused', async (said) => {
  await expect(readInPieces(answer(said))).rejects.toThrow(RangeError);
});

test('the window gets a turn while a large answer is taken up', async () => {
  const size = 48;
  let left = size;
  const large = new Response(new ReadableStream<Uint8Array>({
    pull(controller) {
      if (left-- > 0) controller.enqueue(new Uint8Array(1 << 20)); else controller.close();
    },
  }), { headers: { 'content-length': String(size << 20) } });
  let longest = 0;
  let since = performance.now();
  const turn = setInterval(() => { longest = Math.max(longest, performance.now() - since); since = performance.now(); }, 1);
  const started = performance.now();
  expect((await readInPieces(large)).byteLength).toBe(size << 20);
  const took = performance.now() - started;
  clearInterval(turn);
  // All at a stretch, the first turn would come after the last piece. Ratio of the same run: a loaded machine stretches both.
  if (took > 60) expect(longest).toBeLessThan(took);
});
