import { expect, test } from 'vitest';
import { UPLOAD_PIECE_BYTES } from '../../../app/contract/uploads.ts';
import type { Door } from '../../../app/contract/index.ts';
import { sendFile } from '../../../renderer/uploads/send-file.ts';

/** A door that keeps what comes, and may refuse a piece. */
function door(refuseAt = Infinity) {
  const came: number[] = [];
  const said: string[] = [];
  const call = ((name: string, input: { at?: number; bytes?: Uint8Array }) => {
    said.push(name);
    if (name === 'uploads.begin') return Promise.resolve({ ok: true, value: { upload: 'u' } });
    if (name === 'uploads.drop') return Promise.resolve({ ok: true, value: { done: true } });
    if (input.at! >= refuseAt) return Promise.resolve({ ok: false, error: { code: 'refused', message: 'full', next: '' } });
    came.push(input.bytes!.byteLength);
    return Promise.resolve({ ok: true, value: { received: input.at! + input.bytes!.byteLength } });
  }) as unknown as Door['call'];
  return { call, came, said };
}

const SIZE = 2 * UPLOAD_PIECE_BYTES + 77;
const file = new File([new Uint8Array(SIZE)], 'quarter.zip');
const never = new AbortController().signal;

test('a file goes in pieces, and says how far it is', async () => {
  const to = door();
  const steps: number[] = [];
  expect(await sendFile(to, file, { signal: never, progress: (sent) => { steps.push(sent); } })).toEqual({ ok: true, value: 'u' });
  expect(to.came).toEqual([UPLOAD_PIECE_BYTES, UPLOAD_PIECE_BYTES, 77]);
  expect(steps).toEqual([UPLOAD_PIECE_BYTES, 2 * UPLOAD_PIECE_BYTES, SIZE]);
  expect(to.said).not.toContain('uploads.drop');
});

test('one that is refused on the way, or stopped, is let go', async () => {
  const full = door(UPLOAD_PIECE_BYTES);
  expect(await sendFile(full, file, { signal: never, progress() {} })).toMatchObject({ ok: false, error: { message: 'full' } });
  expect(full.said.at(-1)).toBe('uploads.drop');
  const to = door();
  const stop = new AbortController();
  expect(await sendFile(to, file, { signal: stop.signal, progress() { stop.abort(); } })).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  expect([to.came.length, to.said.at(-1)]).toEqual([1, 'uploads.drop']);
});

test('one that was cut off, or moved, while it was read is let go', async () => {
  for (const broken of [() => Promise.resolve(new ArrayBuffer(3)), () => Promise.reject(new Error('gone'))]) {
    const to = door();
    const cut = { name: 'a.zip', size: SIZE, slice: () => ({ arrayBuffer: broken }) as unknown as Blob };
    expect(await sendFile(to, cut, { signal: never, progress() {} })).toMatchObject({ ok: false, error: { code: 'unreadable' } });
    expect(to.said.at(-1)).toBe('uploads.drop');
  }
});
