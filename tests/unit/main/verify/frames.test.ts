import { expect, test } from 'vitest';
import { createFrameReader, frameOf } from '../../../../main/verify/frames.ts';

const MESSAGES = [{ kind: 'ready' }, { a: new Uint32Array([1, 2, 0xffffffff]), b: new Uint8Array([7]), c: new Float64Array([0.1, -3]), d: ['ü', null] }, { long: 'x'.repeat(100_000) }, 5];

test.each([1, 2, 3, 5, 7, 64, 1000, 65_536, 10_000_000])('messages come through whole when the pipe cuts them into %s bytes', (cut) => {
  const bytes = Buffer.concat(MESSAGES.map(frameOf));
  const heard: unknown[] = [];
  const read = createFrameReader((message) => { heard.push(message); });
  for (let i = 0; i < bytes.byteLength; i += cut) read(Buffer.from(bytes.subarray(i, i + cut)));
  expect(heard).toEqual(MESSAGES);
});

test('a length that no message has is refused before anything is kept for it', () => {
  expect(() => { createFrameReader(() => {})(Buffer.from([0, 0, 0, 0xff])); }).toThrow('not a message of the program');
});
