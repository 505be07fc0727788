import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { contract } from '../../../../app/contract/index.ts';
import { UPLOAD_PIECE_BYTES } from '../../../../app/contract/uploads.ts';
import type { Session } from '../../../../main/services/service.ts';
import { realDisk, sweepUploads, type Disk } from '../../../../main/uploads/uploads.ts';
import { laid, madeUploads } from './laid-upload.ts';

const someone = (): Session => ({ personId: null });
const bytesOf = (size: number): Uint8Array => Uint8Array.from({ length: size }, (_, i) => (i * 31) & 255);
const code = (answer: { ok: boolean; error?: { code: string } }) => (answer.ok ? 'ok' : answer.error!.code);

describe('a file on its way', () => {
  test('comes whole, byte for byte, readable for nobody else, and is gone when it is dropped', async () => {
    const { uploads, folder } = madeUploads();
    const session = someone();
    const bytes = bytesOf(UPLOAD_PIECE_BYTES + 12_345);
    const id = await laid(uploads, session, 'quarter.zip', bytes);
    const whole = uploads.whole(session, id);
    if (!whole.ok) throw new Error(whole.error.message);
    expect(whole.value).toMatchObject({ name: 'quarter.zip', size: bytes.byteLength });
    expect(Buffer.compare(readFileSync(whole.value.file), bytes)).toBe(0);
    if (process.platform !== 'win32') expect(statSync(whole.value.file).mode & 0o077).toBe(0);
    await uploads.drop(session, id);
    expect([readdirSync(folder), whole.value.signal.aborted, code(uploads.whole(session, id))]).toEqual([[], true, 'not-found']);
  });

  test('an empty one is whole at once', async () => {
    const { uploads } = madeUploads();
    const session = someone();
    expect(uploads.whole(session, await laid(uploads, session, 'empty.zip', new Uint8Array(0))).ok).toBe(true);
  });

  test('half of it is not looked at', async () => {
    const { uploads } = madeUploads();
    const session = someone();
    const begun = await uploads.begin(session, 'a.zip', 100);
    if (!begun.ok) throw new Error();
    await uploads.piece(session, begun.value, 0, bytesOf(60));
    expect(uploads.whole(session, begun.value)).toMatchObject({ ok: false, error: { message: 'Only 60 of 100 bytes of the file are here.' } });
  });

  test.each([['a piece left out', 20, 10], ['a piece twice', 0, 10], ['more than was said', 10, 91]])('%s: it is let go', async (_what, at, length) => {
    const { uploads, folder } = madeUploads();
    const session = someone();
    const begun = await uploads.begin(session, 'a.zip', 100);
    if (!begun.ok) throw new Error();
    await uploads.piece(session, begun.value, 0, bytesOf(10));
    expect(code(await uploads.piece(session, begun.value, at, bytesOf(length)))).toBe('refused');
    expect(readdirSync(folder)).toEqual([]);
  });

  test('another window neither sees nor drops it, and has one of its own', async () => {
    const { uploads, folder } = madeUploads();
    const [mine, other] = [someone(), someone()];
    const id = await laid(uploads, mine, 'a.zip', bytesOf(10));
    await uploads.drop(other, id);
    expect([code(uploads.whole(other, id)), code(await uploads.piece(other, id, 10, bytesOf(1))), code(uploads.whole(mine, id))]).toEqual(['not-found', 'not-found', 'ok']);
    await laid(uploads, other, 'b.zip', bytesOf(10));
    expect(readdirSync(folder)).toHaveLength(2);
  });

  test('the next one of a window takes its place, and closing takes all away', async () => {
    const { uploads, folder } = madeUploads();
    const session = someone();
    const first = await laid(uploads, session, 'a.zip', bytesOf(10));
    await laid(uploads, session, 'b.zip', bytesOf(10));
    expect([code(uploads.whole(session, first)), readdirSync(folder).length]).toEqual(['not-found', 1]);
    await uploads.close();
    expect(readdirSync(folder)).toEqual([]);
  });

  test('hostile names lead nowhere: the file lies under a name of the program’s own', async () => {
    const { uploads, folder } = madeUploads();
    const session = someone();
    for (const name of ['../../etc/passwd', 'C:\\windows\\x.zip', '\u0000\u202e.zip', '']) {
      const id = await laid(uploads, session, name, bytesOf(5));
      const whole = uploads.whole(session, id);
      expect(whole.ok && path.dirname(whole.value.file)).toBe(folder);
      expect(readdirSync(folder)).toEqual([`${id}.part`]);
    }
  });
});

describe('a disk that does not do', () => {
  const full: Disk = { ...realDisk, async open(file) {
    const handle = await realDisk.open(file);
    let left = 25;
    return {
      close: () => handle.close(),
      write: (async (bytes: Uint8Array, from: number, length: number, at: number) => {
        if (length > left) throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC', syscall: 'write' });
        left -= length;
        return handle.write(bytes, from, length, at);
      }) as Awaited<ReturnType<Disk['open']>>['write'],
    };
  } };

  test('one that fills up on the way: said, and nothing stays', async () => {
    const { uploads, folder } = madeUploads(full);
    const session = someone();
    const begun = await uploads.begin(session, 'a.zip', 60);
    if (!begun.ok) throw new Error();
    expect(code(await uploads.piece(session, begun.value, 0, bytesOf(20)))).toBe('ok');
    expect(await uploads.piece(session, begun.value, 20, bytesOf(20))).toMatchObject({ ok: false, error: { message: expect.stringContaining('is full') as string } });
    expect(readdirSync(folder)).toEqual([]);
  });

  test('one without room for it: not begun, and said how much there is', async () => {
    const { uploads } = madeUploads({ ...realDisk, free: () => Promise.resolve(70_000_000) });
    const begun = await uploads.begin(someone(), 'a.zip', 30_000_000);
    expect(begun).toMatchObject({ ok: false, error: { message: expect.stringContaining('30 MB: 70 MB are free') as string } });
  });

  test('a folder that can’t be made', async () => {
    const { folder } = madeUploads();
    writeFileSync(path.join(folder, 'taken'), '');
    const { createUploads } = await import('../../../../main/uploads/uploads.ts');
    const uploads = createUploads({ folder: () => path.join(folder, 'taken'), newId: () => 'x' });
    expect(code(await uploads.begin(someone(), 'a.zip', 1))).toBe('refused');
  });
});

test('what a killed program left is swept, and nothing else', () => {
  const { folder } = madeUploads();
  for (const name of ['one.part', 'two.part', 'notes.txt']) writeFileSync(path.join(folder, name), 'x');
  mkdirSync(path.join(folder, 'folder'));
  sweepUploads(folder);
  expect(readdirSync(folder).sort()).toEqual(['folder', 'notes.txt']);
  sweepUploads(path.join(folder, 'not there'));
});

test('the door takes no longer pieces and no larger files than it says', () => {
  const piece = contract['uploads.piece'].input;
  expect(piece.safeParse({ upload: 'a', at: 0, bytes: new Uint8Array(UPLOAD_PIECE_BYTES) }).success).toBe(true);
  expect(piece.safeParse({ upload: 'a', at: 0, bytes: new Uint8Array(UPLOAD_PIECE_BYTES + 1) }).success).toBe(false);
  expect(piece.safeParse({ upload: 'a', at: -1, bytes: new Uint8Array(1) }).success).toBe(false);
  expect(contract['uploads.begin'].input.safeParse({ name: 'a', size: 2 ** 32 }).success).toBe(false);
});
