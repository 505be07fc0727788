import BetterSqlite from 'better-sqlite3';
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { appendAudit } from '../../../../db/ledger/append-audit.ts';
import { openCasebook } from '../../../../db/open-casebook.ts';
import { createVerifyInThreads, verifyOnThisThread } from '../../../../main/verify/verify-in-threads.ts';
import { intake, madeCasebook, type MadeCasebook } from '../../db/made-casebook.ts';

const WORKER = pathToFileURL(path.resolve(import.meta.dirname, '../../../../main/verify/verify-worker.ts')).href;
const inThreads = createVerifyInThreads(WORKER);
const AT = '2026-03-02T10:00:00.000Z';
/** More than two pieces of a ledger. */
const MANY = 6000;

async function made(notes = 0): Promise<MadeCasebook> {
  const book = await madeCasebook();
  const { casebook, deps, personId } = book;
  for (let i = 0; i < 3; i++) await casebook.cases.takeIn({ at: deps.now().toISOString(), personId, operation: 'cases.takeIn' }, intake());
  casebook.handle.transactNow((tx) => {
    for (let i = 0; i < notes; i++) appendAudit(tx, { at: '2026-03-02T09:30:00.000Z', personId, operation: 'test.note' }, { subject: 'Zoë', caseId: null, content: { note: i % 2 ? 'plain' : 'with "quotes" and \n lines', n: i } });
  });
  return book;
}

/** Works on the closed file from outside, with the guards out of the way, and opens it again. */
function tampered({ casebook, file, options }: MadeCasebook, sql: string) {
  casebook.close();
  const sqlite = new BetterSqlite(file);
  for (const { name } of sqlite.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger'`).all() as { name: string }[]) sqlite.exec(`DROP TRIGGER ${name}`);
  sqlite.pragma('foreign_keys = OFF');
  sqlite.exec(sql);
  sqlite.close();
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  return opened.value;
}

/** What another program meets when it wants the file. */
const fromOutside = (file: string): string => execFileSync(process.execPath, ['-e', `
  const db = new (require('better-sqlite3'))(process.argv[1], { timeout: 20 });
  try { db.prepare('SELECT count(*) FROM person').get(); console.log('free'); } catch (e) { console.log(e.code); }`, file], { encoding: 'utf8', cwd: import.meta.dirname }).trim();

test('an open, locked casebook is read past its lock, which stays; the outcome is that of one thread', async () => {
  const { casebook, file } = await made(MANY);
  const steps: number[] = [];
  const verified = await inThreads(casebook, { at: AT, progress: (done, total) => { steps.push(done / total); } });
  expect(verified).toEqual(await verifyOnThisThread(casebook, { at: AT }));
  expect(verified).toMatchObject({ sound: true, at: AT });
  expect(verified!.parts.find((part) => part.part === 'audit ledger')!.checked).toBeGreaterThan(MANY);
  expect(steps).toEqual([...steps].sort((a, b) => a - b));
  expect(fromOutside(file)).toBe('SQLITE_BUSY');
  casebook.close();
  expect(fromOutside(file)).toBe('free');
});

test('what is written meanwhile neither disturbs it nor is lost', async () => {
  const { casebook, personId, options } = await made(MANY);
  const asked = inThreads(casebook, { at: AT });
  let written = 0;
  const writing = setInterval(() => { written += 1; void casebook.audit.note({ at: AT, personId, operation: 'test.note' }, { subject: 'x', content: { written } }); }, 2);
  const verified = await asked;
  clearInterval(writing);
  expect(written).toBeGreaterThan(3);
  expect(verified!.sound).toBe(true);
  const before = verified!.parts.find((part) => part.part === 'audit ledger')!.checked;
  const after = (await inThreads(casebook, { at: AT }))!.parts.find((part) => part.part === 'audit ledger')!;
  expect(after).toMatchObject({ sound: true, checked: before + written });
  casebook.close();
  const again = openCasebook(options);
  expect(again.ok && (await again.value.ledgers.verify({ at: AT }))!.sound).toBe(true);
  if (again.ok) again.value.close();
});

test.each([
  ['an entry in a later piece', `UPDATE audit_entry SET content = replace(content, '"n":5100', '"n":5101') WHERE content LIKE '%"n":5100,%' OR content LIKE '%"n":5100}%'`],
  ['an entry that is gone at the border of two pieces', 'DELETE FROM audit_entry WHERE seq = 2500'],
  ['the first entry of a piece', `UPDATE audit_entry SET previous = hash WHERE seq = 2501`],
  ['two faults: the first is named', `UPDATE audit_entry SET at = 'x' WHERE seq IN (5200, 2700)`],
  ['an end that was cut off', 'DELETE FROM audit_entry WHERE seq > 5990'],
  ['an entry numbered below 1', `INSERT INTO audit_entry SELECT -3, at, person_id, operation, subject, case_id, content, previous, hash FROM audit_entry WHERE seq = 9`],
  ['numbers far above', `UPDATE audit_entry SET seq = 9000000000000000 WHERE seq = (SELECT max(seq) FROM audit_entry)`],
  ['an entry of custody', `UPDATE custody_entry SET content = '{}' WHERE seq = 2`],
  ['the last entry of custody that the audit ledger names', `DELETE FROM custody_entry WHERE seq = (SELECT max(seq) FROM custody_entry); UPDATE sqlite_sequence SET seq = (SELECT max(seq) FROM custody_entry) WHERE name = 'custody_entry'`],
  ['a row', `UPDATE person SET name = 'Zed'`],
  ['a row that is gone', 'DELETE FROM parcel WHERE rowid = 2'],
  ['a row from outside', `INSERT INTO person SELECT 'other', 'Zed', 'Z', roles, active, created_at FROM person LIMIT 1`],
  ['an entry that is no JSON', `UPDATE audit_entry SET content = '{' WHERE seq = 3`],
  ['the order of members', `UPDATE audit_entry SET content = '{"z":1,"a":2}' WHERE seq = 4`],
])('%s is found as on one thread', async (_what, sql) => {
  const casebook = tampered(await made(MANY), sql);
  const verified = await inThreads(casebook, { at: AT });
  expect(verified).toEqual(await verifyOnThisThread(casebook, { at: AT }));
  expect(verified!.sound).toBe(false);
  casebook.close();
}, 30_000);

test('it can be stopped, and a casebook that is closed meanwhile gives no answer', async () => {
  const { casebook } = await made(MANY);
  const stop = new AbortController();
  const asked = inThreads(casebook, { at: AT, signal: stop.signal });
  setTimeout(() => { stop.abort(); }, 5);
  expect(await asked).toBeNull();
  const closed = inThreads(casebook, { at: AT });
  setTimeout(() => { casebook.close(); }, 5);
  expect(await closed).toBeNull();
});

test('where no thread can read the file, this one does', async () => {
  const { casebook, file } = await made();
  const elsewhere: typeof casebook = { ...casebook, still: (work) => casebook.still(() => work(`${file}.not-there`)) };
  expect(await inThreads(elsewhere, { at: AT })).toMatchObject({ sound: true });
  casebook.close();
});
