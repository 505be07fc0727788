import BetterSqlite from 'better-sqlite3';
import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { openCasebook } from '../../../../db/open-casebook.ts';
import { putRawRecord } from '../../../../db/store/put-raw-record.ts';
import { intake, madeCasebook } from '../made-casebook.ts';

/** Deterministic bytes that do not compress. */
function noise(length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  let state = 12345;
  for (let i = 0; i < length; i++) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    bytes[i] = state >>> 24;
  }
  return bytes;
}

async function withRecords(...contents: Uint8Array[]) {
  const made = await madeCasebook();
  const change = { at: made.deps.now().toISOString(), personId: made.personId, operation: 'runs.record' };
  const taken = await made.casebook.cases.takeIn(change, intake());
  if (!taken.ok) throw new Error('not taken in');
  const ids = await made.casebook.handle.transact((tx) => contents.map((bytes, i) =>
    putRawRecord(tx, made.deps, change, { caseId: taken.value.caseId, name: `f${i}`, mediaType: 'application/octet-stream', bytes }).id));
  return { ...made, ids };
}

test('bytes come back as they were, whether they compress or not', async () => {
  const text = new TextEncoder().encode('##TITLE=made\r\n'.repeat(500));
  const contents = [text, noise(5000), new Uint8Array(0)];
  const { casebook, ids } = await withRecords(...contents);
  for (const [i, id] of ids.entries()) {
    const read = await casebook.rawRecords.content(id);
    expect(read).toMatchObject({ ok: true, value: { bytes: contents[i], sha256: createHash('sha256').update(contents[i]!).digest('hex') } });
  }
  expect(casebook.handle.read.all('SELECT packing, length(content) < size AS smaller FROM raw_record ORDER BY rowid')).toEqual([
    { packing: 'deflate', smaller: 1 }, { packing: 'stored', smaller: 0 }, { packing: 'stored', smaller: 0 }]);
  casebook.close();
});

test('bytes that were changed are refused at reading and named by verify', async () => {
  const { casebook, ids, file, options } = await withRecords(noise(400));
  casebook.close();
  const outside = new BetterSqlite(file);
  outside.exec(`DROP TRIGGER raw_record_no_update; UPDATE raw_record SET content = CAST(substr(content, 1, 399) || x'00' AS BLOB)`);
  outside.close();
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  expect(await opened.value.rawRecords.content(ids[0]!)).toMatchObject({ ok: false, error: { code: 'unreadable' } });
  expect((await opened.value.ledgers.verify({ at: 'now' }))!.parts.find((p) => p.part === 'raw records')).toMatchObject({ sound: false, fault: expect.stringContaining('“f0” was changed') as string });
  opened.value.close();
});

test('bytes changed together with their digest are found through the audit ledger', async () => {
  const { casebook, file, options } = await withRecords(noise(400));
  casebook.close();
  const outside = new BetterSqlite(file);
  const forged = noise(300);
  outside.exec('DROP TRIGGER raw_record_no_update');
  outside.prepare('UPDATE raw_record SET content = ?, size = 300, sha256 = ?').run(Buffer.from(forged), createHash('sha256').update(forged).digest('hex'));
  outside.close();
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  expect((await opened.value.ledgers.verify({ at: 'now' }))!.parts.find((p) => p.part === 'raw records')).toMatchObject({ sound: false, fault: expect.stringContaining('was replaced') as string });
  opened.value.close();
});
