import { createHash } from 'node:crypto';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Call } from '../../../../main/services/service.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { makeOpenKey } from '../../../../main/keys/make-open-key.ts';
import { createSealedBundlesServices } from '../../../../main/services/sealed-bundles.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import { bundleOf } from '../bundle/made-bundle.ts';
import { concludeAll } from './conclude-all.ts';
import { laid, madeUploads } from '../uploads/laid-upload.ts';
import { openHouse, type House } from './work-house.ts';

/** One house wrote a bundle with a key of its own; another is asked to take it in. */
let sender: House;
let receiver: House;
let zip: Uint8Array<ArrayBuffer>;

beforeAll(async () => {
  sender = await openHouse();
  receiver = await openHouse();
  await makeOpenKey(sender.casebook, { at: sender.now(), personId: sender.examiner, operation: 'keys.create' }, new Uint8Array(32).fill(9));
  const { caseId, stones } = await sender.takeIn();
  await concludeAll(sender, Object.values(stones));
  await sender.done(sender.colleague, 'reports.issue', { caseId });
  zip = await bundleOf(sender);
}, 240_000);
afterAll(() => { sender.close(); receiver.close(); });

const { uploads } = madeUploads();
const services = (house: House) => createSealedBundlesServices({
  now: () => new Date(house.now()), newId: () => 'id', casebook: () => house.casebook, signer: createKeyring(() => house.casebook), pool: createInlinePool(), uploads,
});
const call = (house: House): Call => ({ session: { personId: house.examiner }, signal: new AbortController().signal, emit: () => undefined });
const takeIn = async (bytes: Uint8Array, checkedHow = '', house = receiver) => {
  const by = call(house);
  return services(house)['bundles.takeIn']({ upload: await laid(uploads, by.session, 'quarter.zip', bytes), checkedHow }, by);
};
const rows = (house: House) => house.casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM sealed_bundle')!.n;

describe('a bundle of another laboratory', () => {
  test('is refused where it was altered, and nothing of it is kept', async () => {
    const altered = zip.slice();
    altered[zip.length >> 1]! ^= 4;
    const answer = await takeIn(altered, 'by telephone');
    expect(answer.ok ? null : [answer.error.code, answer.error.message.includes('altered')]).toEqual(['refused', true]);
    expect(rows(receiver)).toBe(0);
  });

  test('by an unknown key is asked about with its fingerprint, beside the field', async () => {
    const answer = await takeIn(zip);
    expect(answer.ok ? null : answer.error).toMatchObject({ code: 'invalid-input', fields: { checkedHow: expect.stringMatching(/([0-9a-f]{4} ){15}[0-9a-f]{4}/) as string } });
    expect(rows(receiver)).toBe(0);
  });

  test('is none of another in the house that wrote it', async () => {
    const answer = await takeIn(zip, '', sender);
    expect(answer.ok ? null : answer.error.message).toContain('of this laboratory itself');
  });

  test('is kept as it came, with an entry in the audit ledger, and a second time noticed', async () => {
    const id = createHash('sha256').update(zip).digest('hex');
    const answer = await takeIn(zip, 'fingerprint read out by telephone');
    expect(answer.ok ? answer.value : answer.error).toMatchObject({ id, verdict: 'unknown-key', checkedHow: 'fingerprint read out by telephone', size: zip.byteLength, summary: { cases: ['C-2026-0001'], reports: 1 } });
    const again = await takeIn(zip, 'once more');
    expect(again.ok ? null : [again.error.code, again.error.message]).toEqual(['conflict', 'This very bundle was taken in already, on 2026-11-25 by Ada Invented.']);
    expect(rows(receiver)).toBe(1);
    const entry = receiver.casebook.handle.read.get<{ content: string }>(`SELECT content FROM audit_entry WHERE operation = 'bundles.takeIn'`)!;
    expect(JSON.parse(entry.content)).toMatchObject({ laboratory: 'Invented Laboratory', checkedHow: 'fingerprint read out by telephone' });
    expect((await receiver.casebook.ledgers.verify({ at: receiver.now() }))?.sound).toBe(true);
  });

  test('is opened, case by case, and gives its files byte for byte', async () => {
    const [kept] = await receiver.casebook.sealedBundles.list();
    const open = await services(receiver)['bundles.open']({ id: kept!.id }, call(receiver));
    if (!open.ok) throw new Error(open.error.message);
    const [one] = open.value.index.cases;
    const record = await services(receiver)['bundles.case']({ id: kept!.id, folder: one!.folder }, call(receiver));
    if (!record.ok) throw new Error(record.error.message);
    expect(record.value.stones).toHaveLength(3);
    const { path, pdfSha256 } = record.value.reports[0]!;
    const pdf = await services(receiver)['bundles.file']({ id: kept!.id, path }, call(receiver));
    expect(pdf.ok && createHash('sha256').update(pdf.value.bytes).digest('hex')).toBe(pdfSha256);
    expect(pdf.ok && Buffer.compare(pdf.value.bytes, unzipSync(zip)[path]!)).toBe(0);
    const nothing = await services(receiver)['bundles.file']({ id: kept!.id, path: '../etc/passwd' }, call(receiver));
    expect(nothing.ok ? null : nothing.error.code).toBe('not-found');
  });

  test('never mixes with the cases of the house', async () => {
    expect((await receiver.casebook.cases.list({ text: '', state: 'all', limit: 10, offset: 0 })).total).toBe(0);
    expect((await receiver.casebook.bench.today(receiver.now(), null)).counts).toMatchObject({ cases: 0, stones: 0, reports: 0 });
    expect((await receiver.takeIn()).caseId).toBeTruthy();
    expect((await receiver.casebook.cases.list({ text: '', state: 'all', limit: 10, offset: 0 })).rows.map(({ number }) => number)).toEqual(['C-2026-0001']);
  });

  test('can’t be changed or taken out, and is not shown where its bytes were changed all the same', async () => {
    const { handle } = receiver.casebook;
    await expect(handle.transact((tx) => { tx.run(`UPDATE sealed_bundle SET zip = zeroblob(9)`); })).rejects.toThrow(/only grows/);
    await expect(handle.transact((tx) => { tx.run('DELETE FROM sealed_bundle'); })).rejects.toThrow(/only grows/);
    const [kept] = await receiver.casebook.sealedBundles.list();
    await handle.transact((tx) => {
      for (const { name } of tx.all<{ name: string }>(`SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'sealed_bundle'`)) tx.run(`DROP TRIGGER "${name}"`);
      tx.run(`UPDATE sealed_bundle SET zip = zeroblob(9)`);
      tx.written.forget();
    });
    const open = await services(receiver)['bundles.open']({ id: kept!.id }, call(receiver));
    expect(open.ok ? null : open.error.code).toBe('unreadable');
    const verified = await receiver.casebook.ledgers.verify({ at: receiver.now() });
    expect(verified?.parts.find(({ part }) => part === 'facts and findings')).toMatchObject({ sound: false, fault: expect.stringContaining('quarter.zip') as string });
  });
});
