import { bytesToHex } from '@noble/hashes/utils.js';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { CONCLUSION_WORDS, type ConclusionId } from '../../../../app/domain/conclusion.ts';
import { createDescribeKept } from '../../../../main/bundle/describe-kept.ts';
import { createKeptBundles } from '../../../../main/bundle/kept-bundle.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import { makeOpenKey } from '../../../../main/keys/make-open-key.ts';
import { publicKeyOf } from '../../../../main/keys/ed25519.ts';
import { createSealedBundlesServices } from '../../../../main/services/sealed-bundles.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import { bundleOf } from '../bundle/made-bundle.ts';
import { laid, madeUploads } from '../uploads/laid-upload.ts';
import { concludeAll } from './conclude-all.ts';
import { INTAKE, openHouse, type House } from './work-house.ts';

const SEED = new Uint8Array(32).fill(9);
const { uploads } = madeUploads();
/** One house writes bundles, and an impostor with its key; another takes them in. */
let sender: House;
let impostor: House;
let receiver: House;

const services = () => createSealedBundlesServices({
  now: () => new Date(receiver.now()), newId: () => 'id', casebook: () => receiver.casebook, signer: createKeyring(() => receiver.casebook), pool: createInlinePool(), uploads,
});
const call = () => ({ session: { personId: receiver.examiner }, signal: new AbortController().signal, emit: () => undefined });
async function takeIn(bytes: Uint8Array, name: string): Promise<string> {
  const by = call();
  const taken = await services()['bundles.takeIn']({ upload: await laid(uploads, by.session, name, bytes), checkedHow: 'by telephone' }, by);
  if (!taken.ok) throw new Error(taken.error.message);
  return taken.value.id;
}
async function openedBundle(id: string) {
  const open = await services()['bundles.open']({ id }, call());
  if (!open.ok) throw new Error(open.error.message);
  return open.value;
}
const find = async (text: string) => (await receiver.casebook.find.anything(text)).map(({ kind, title, detail }) => ({ kind, title, detail }));

beforeAll(async () => {
  [sender, impostor, receiver] = [await openHouse(), await openHouse(), await openHouse()];
  for (const house of [sender, impostor]) await makeOpenKey(house.casebook, { at: house.now(), personId: house.examiner, operation: 'keys.create' }, SEED);
  const { caseId, stones } = await sender.takeIn({ remarks: 'brought in a violet étui', client: { ...INTAKE.client, name: 'Quill & Vane' } as never });
  await concludeAll(sender, Object.values(stones));
  await sender.done(sender.colleague, 'reports.issue', { caseId });
  await impostor.takeIn({ remarks: 'never seen before' });
}, 240_000);
afterAll(() => { for (const house of [sender, impostor, receiver]) house.close(); });

describe('cases of bundles that were taken in', () => {
  let first = '';
  beforeAll(async () => { first = await takeIn(await bundleOf(sender), 'quarter one.zip'); }, 240_000);

  test.each([['a client', 'quill'], ['a number', 'C-2026-0001'], ['a remark without its accent', 'violet etui'], ['an item', 'brooch'], ['a report', 'S-2026-0001'], ['a laboratory', 'invented laboratory quill']])('are found by %s, and said to be of another laboratory', async (_what, text) => {
    const found = await find(text);
    expect(found[0]).toMatchObject({ kind: 'sealed', title: 'C-2026-0001', detail: expect.stringContaining('Invented Laboratory · Quill & Vane') as string });
    const [hit] = await receiver.casebook.find.anything(text);
    expect(hit!.id).toBe(`${first}/cases/C-2026-0001`);
  });

  test('are found by a conclusion and by its reasons', async () => {
    const row = receiver.casebook.handle.read.get<{ conclusion: string; reason: string }>('SELECT conclusion, reason FROM sealed_case')!;
    for (const text of [CONCLUSION_WORDS[row.conclusion.split('\u001f')[0] as ConclusionId], row.reason.split('\u001f')[0]!]) {
      expect(text).not.toBe('');
      expect((await find(text.split(' ').slice(0, 4).join(' ')))[0]?.kind).toBe('sealed');
    }
  });

  test('stand beside the house’s own and never among them', async () => {
    await receiver.takeIn();
    const kinds = (await find('C-2026-0001')).map(({ kind }) => kind);
    expect([kinds.indexOf('sealed') > kinds.indexOf('case'), kinds.includes('case')]).toEqual([true, true]);
    expect((await receiver.casebook.cases.list({ text: 'quill', state: 'all', limit: 10, offset: 0 })).total).toBe(0);
  });

  test('of a casebook from before they were found are read once, and the index is made anew with them', async () => {
    const { casebook } = receiver;
    await casebook.handle.transact((tx) => {
      for (const table of ['sealed_case', 'sealed_facts']) tx.run(`DELETE FROM ${table}`);
    });
    await casebook.find.rebuild();
    expect(await find('quill')).toEqual([]);
    const describe = createDescribeKept(createKeptBundles());
    expect([await describe(casebook), await describe(casebook)]).toEqual([1, 0]);
    expect((await find('quill'))[0]?.kind).toBe('sealed');
    await casebook.find.rebuild();
    expect((await find('quill'))[0]?.kind).toBe('sealed');
  });

  test('a later bundle of the same laboratory that goes on contradicts nothing', async () => {
    sender.pass(60 * 24);
    await sender.takeIn();
    const later = await takeIn(await bundleOf(sender), 'quarter two.zip');
    expect((await openedBundle(later)).contradictions).toEqual([]);
  });

  test('one with the same key that does not go on is told by name, on both sides and in the list', async () => {
    impostor.pass(60 * 24 * 3);
    const id = await takeIn(await bundleOf(impostor), 'forged\u202e.zip');
    const { contradictions } = await openedBundle(id);
    const sentences = contradictions.map(({ sentence }) => sentence);
    expect(sentences.some((one) => /^The (custody|audit) ledger ends at entry \d+ in “quarter (one|two)\.zip” of 2026-11-2\d and at entry \d+ in “forged\ufffd\.zip”/.test(one))).toBe(true);
    // The ids of both houses are counted in the same way: it is the same case with another history.
    expect(sentences.some((one) => /^Entry \d+ of the custody ledger, of case C-2026-0001, is another one in “forged\ufffd\.zip” of 2026-11-28; it stands in “quarter one\.zip” of 2026-11-25\.$/.test(one))).toBe(true);
    expect(sentences).toContain('Report S-2026-0001, revision 1, of case C-2026-0001 is missing in “forged\ufffd.zip” of 2026-11-28; it stands in “quarter one.zip” of 2026-11-25.');
    expect((await openedBundle(first)).contradictions.every(({ other }) => other === id)).toBe(true);
    const list = await services()['bundles.list']({}, call());
    expect(list.ok && list.value.map(({ name, contradicts }) => [name, contradicts > 0])).toEqual([['forged\ufffd.zip', true], ['quarter two.zip', true], ['quarter one.zip', true]]);
  }, 240_000);

  test('the key that signed one is kept as known after its fingerprint was compared, with an entry in the audit ledger', async () => {
    expect((await openedBundle(first)).signedBy).toEqual({ whose: null, distrust: '' });
    const kept = await services()['bundles.keepKey']({ id: first, checkedHow: 'read out by telephone' }, call());
    expect(kept.ok ? kept.value : kept.error).toMatchObject({ publicKey: bytesToHex(publicKeyOf(SEED)), laboratory: 'Invented Laboratory', checkedHow: 'read out by telephone', active: true });
    expect((await openedBundle(first)).signedBy).toEqual({ whose: 'Invented Laboratory', distrust: '' });
    expect(receiver.casebook.handle.read.get<{ content: string }>(`SELECT content FROM audit_entry WHERE operation = 'bundles.keepKey'`)!.content).toContain('read out by telephone');
    const again = await services()['bundles.keepKey']({ id: first, checkedHow: 'once more' }, call());
    expect(again.ok ? null : again.error.message).toContain('is kept already');
    expect((await receiver.casebook.ledgers.verify({ at: receiver.now() }))?.sound).toBe(true);
  });
});
