import { createHash, randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openCasebook, type Casebook } from '../../../db/open-casebook.ts';
import { PIECE_BYTES } from '../../../db/store/bundle-pieces.ts';
import type { BundleBytes } from '../../../db/store/sealed-bundles.ts';
import { madeCasebook } from '../../unit/db/made-casebook.ts';
import { runUntilKilled } from '../casebook/run-until-killed.ts';
import { seeded } from '../casebook/seeded.ts';
import { inventedBundle } from './invented-bundle.ts';

const rows = ({ handle }: Casebook) => handle.read.get<{ bundles: number; pieces: number }>('SELECT (SELECT count(*) FROM sealed_bundle) AS bundles, (SELECT count(*) FROM sealed_bundle_piece) AS pieces');
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex');
const bytesOf = (bytes: Uint8Array, pace: BundleBytes['pace'] = () => Promise.resolve(true)): BundleBytes => ({ read: (at, length) => bytes.subarray(at, at + length), pace });

async function begun() {
  const made = await madeCasebook();
  const change = { at: made.deps.now().toISOString(), personId: made.personId, operation: 'bundles.takeIn' };
  return { ...made, change, keep: (bytes: Uint8Array, brought = bytesOf(bytes), id = sha256(bytes)) => made.casebook.sealedBundles.keep(change, inventedBundle(id, bytes.byteLength), brought) };
}
const BYTES = randomBytes(2 * PIECE_BYTES + 17);

describe('a bundle that is taken in', () => {
  test('is kept in pieces and read anywhere, over their borders too', async () => {
    const { casebook, keep } = await begun();
    expect((await keep(BYTES)).ok).toBe(true);
    expect(rows(casebook)).toEqual({ bundles: 1, pieces: 3 });
    for (const [at, length] of [[0, 10], [PIECE_BYTES - 3, 7], [2 * PIECE_BYTES, 17], [0, BYTES.byteLength], [BYTES.byteLength - 2, 2]] as const) {
      expect(Buffer.compare(casebook.sealedBundles.read(sha256(BYTES), at, length), BYTES.subarray(at, at + length))).toBe(0);
    }
    expect((await casebook.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' }))?.parts.find(({ part }) => part === 'bundles taken in')).toMatchObject({ checked: 1, sound: true });
    casebook.close();
  });

  test('that is stopped, cut off, exchanged on the way, or breaks, leaves nothing', async () => {
    const { casebook, keep } = await begun();
    const before = (await casebook.checkpoints.heads()).audit;
    const code = async (brought: BundleBytes) => {
      const answer = await keep(BYTES, brought);
      return answer.ok ? 'ok' : answer.error.code;
    };
    expect(await code(bytesOf(BYTES, (kept) => Promise.resolve(kept < PIECE_BYTES * 2)))).toBe('cancelled');
    expect(await code({ ...bytesOf(BYTES), read: (at, length) => (at >= PIECE_BYTES ? new Uint8Array(0) : BYTES.subarray(at, at + length)) })).toBe('refused');
    const exchanged = Uint8Array.from(BYTES);
    exchanged[PIECE_BYTES + 5]! ^= 1;
    expect(await code(bytesOf(exchanged))).toBe('refused');
    await expect(keep(BYTES, { ...bytesOf(BYTES), read: (at) => { if (at > 0) throw new Error('the disk was taken away'); return BYTES.subarray(0, PIECE_BYTES); } })).rejects.toThrow('taken away');
    expect(rows(casebook)).toEqual({ bundles: 0, pieces: 0 });
    expect((await casebook.checkpoints.heads()).audit).toEqual(before);
    casebook.close();
  });

  test('where the disk is full: said, nothing stays, and the casebook goes on', async () => {
    const { casebook, keep } = await begun();
    const { page_count: pages } = casebook.handle.read.get<{ page_count: number }>('PRAGMA page_count')!;
    // SQLite then answers as it does on a full disk (SQLITE_FULL).
    casebook.handle.read.get(`PRAGMA max_page_count = ${pages + 400}`);
    expect(await keep(BYTES)).toMatchObject({ ok: false, error: { code: 'refused', message: expect.stringContaining('is full') as string } });
    expect(rows(casebook)).toEqual({ bundles: 0, pieces: 0 });
    expect((await casebook.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' }))?.sound).toBe(true);
    casebook.close();
  });

  test('while another one is: it waits its turn', async () => {
    const { casebook, keep } = await begun();
    const first = keep(BYTES);
    expect(await keep(randomBytes(10))).toMatchObject({ ok: false, error: { code: 'busy' } });
    expect((await first).ok).toBe(true);
    casebook.close();
  });

  test('keeps its pieces: none can be changed, taken out, exchanged or added', async () => {
    const { casebook, keep } = await begun();
    await keep(BYTES);
    const id = sha256(BYTES);
    for (const sql of [
      `UPDATE sealed_bundle_piece SET bytes = zeroblob(9) WHERE seq = 1`, `DELETE FROM sealed_bundle_piece WHERE seq = 2`,
      `INSERT OR REPLACE INTO sealed_bundle_piece VALUES ('${id}/1', '${id}', 1, zeroblob(9))`, `INSERT INTO sealed_bundle_piece VALUES ('${id}/3', '${id}', 3, zeroblob(9))`,
    ]) await expect(casebook.handle.transact((tx) => { tx.run(sql); })).rejects.toThrow(/only grows/);
    casebook.close();
  });

  test('whose piece was changed from outside is named when the casebook is verified', async () => {
    const { casebook, keep } = await begun();
    await keep(BYTES);
    await casebook.handle.transact((tx) => {
      tx.run('DROP TRIGGER sealed_bundle_piece_no_update');
      tx.run('UPDATE sealed_bundle_piece SET bytes = zeroblob(17) WHERE seq = 2');
    });
    expect((await casebook.ledgers.verify({ at: '2026-11-25T09:00:00.000Z' }))?.parts.find(({ part }) => part === 'bundles taken in'))
      .toMatchObject({ sound: false, fault: 'The bundle “invented.zip” of Invented Laboratory was changed: its bytes no longer give its digest.' });
    casebook.close();
  });
});

/** Kills the loop some milliseconds after its first piece; returns the bundles it vouched for. */
const keepUntilKilled = async (file: string, afterMs: number): Promise<string[]> =>
  (await runUntilKilled({ args: [join(import.meta.dirname, 'keep-loop.ts'), file], afterMs, begun: 'piece' })).filter((line) => line.startsWith('kept ')).map((line) => line.slice(5));

test('killed in the middle, again and again: what was vouched for is there, whole, and nothing is half there', async () => {
  const { casebook, file, options } = await begun();
  casebook.close();
  const random = seeded(20261128);
  const vouched: string[] = [];
  for (let round = 0; round < 3; round++) {
    vouched.push(...await keepUntilKilled(file, Math.floor(random() * 150)));
    const opened = openCasebook({ ...options, file });
    if (!opened.ok) throw new Error(opened.error.message);
    const kept = (await opened.value.sealedBundles.list()).map(({ id }) => id);
    for (const id of vouched) expect(kept).toContain(id);
    // Four pieces each, and none without its bundle.
    expect(rows(opened.value)).toEqual({ bundles: kept.length, pieces: 4 * kept.length });
    expect((await opened.value.ledgers.verify({ at: options.now().toISOString() }))!.parts.filter((part) => !part.sound)).toEqual([]);
    opened.value.close();
  }
}, 300_000);
