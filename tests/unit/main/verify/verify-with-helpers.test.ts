import BetterSqlite from 'better-sqlite3';
import { execFileSync, spawn } from 'node:child_process';
import { copyFileSync, readFileSync, readdirSync } from 'node:fs';
import type { Duplex } from 'node:stream';
import path from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { appendAudit } from '../../../../db/ledger/append-audit.ts';
import { openCasebook } from '../../../../db/open-casebook.ts';
import { frameOf } from '../../../../main/verify/frames.ts';
import { createVerifyWithHelpers, verifyOnThisThread } from '../../../../main/verify/verify-with-helpers.ts';
import { bundledHelpers } from './bundled-helpers.ts';
import { intake, madeCasebook, temporaryFolder, type MadeCasebook } from '../../db/made-casebook.ts';

const { worker: WORKER, entry: ENTRY } = await bundledHelpers();
const inThreads = createVerifyWithHelpers({ workerFile: WORKER });
const inProcesses = createVerifyWithHelpers({ workerFile: WORKER, program: { file: process.execPath, args: [ENTRY], from: 0 } });
const AT = '2026-03-02T10:00:00.000Z';
// A helper is started in a tenth of a second on a quiet machine, and in many on one that others keep busy.
vi.setConfig({ testTimeout: 300_000 });
/** More than two pieces of a ledger. */
const MANY = 6000;

async function write(notes: number): Promise<MadeCasebook> {
  const book = await madeCasebook();
  const { casebook, deps, personId } = book;
  for (let i = 0; i < 3; i++) await casebook.cases.takeIn({ at: deps.now().toISOString(), personId, operation: 'cases.takeIn' }, intake());
  casebook.handle.transactNow((tx) => {
    for (let i = 0; i < notes; i++) appendAudit(tx, { at: '2026-03-02T09:30:00.000Z', personId, operation: 'test.note' }, { subject: 'Zoë', caseId: null, content: { note: i % 2 ? 'plain' : 'with "quotes" and \n lines', n: i } });
  });
  casebook.close();
  return book;
}

const written = new Map<number, Promise<MadeCasebook>>();

/** A casebook with so many notes, opened: written once, and copied for each test. */
async function made(notes = 0): Promise<MadeCasebook> {
  if (!written.has(notes)) written.set(notes, write(notes));
  const first = await written.get(notes)!;
  const file = path.join(temporaryFolder(), 'Casebook.culet');
  copyFileSync(first.file, file);
  const options = { ...first.options, file };
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  return { ...first, casebook: opened.value, file, options };
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

/** What is done to the file from outside. Pieces are done by the same code whoever does them: of these every fifth is enough for processes. */
const CASES: readonly (readonly [string, string])[] = [
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
];

describe.each([['threads', inThreads], ['processes', inProcesses]] as const)('with %s that help', (how, verify) => {
  test('an open, locked casebook is read past its lock, which stays; the outcome is that of one thread', async () => {
    const { casebook, file } = await made(MANY);
    const steps: number[] = [];
    const verified = await verify(casebook, { at: AT, progress: (done, total) => { steps.push(done / total); } });
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
    const asked = verify(casebook, { at: AT });
    let written = 0;
    const writing = setInterval(() => { written += 1; void casebook.audit.note({ at: AT, personId, operation: 'test.note' }, { subject: 'x', content: { written } }); }, 2);
    const verified = await asked;
    clearInterval(writing);
    expect(written).toBeGreaterThan(3);
    expect(verified!.sound).toBe(true);
    const before = verified!.parts.find((part) => part.part === 'audit ledger')!.checked;
    const after = (await verify(casebook, { at: AT }))!.parts.find((part) => part.part === 'audit ledger')!;
    expect(after).toMatchObject({ sound: true, checked: before + written });
    casebook.close();
    const again = openCasebook(options);
    expect(again.ok && (await again.value.ledgers.verify({ at: AT }))!.sound).toBe(true);
    if (again.ok) again.value.close();
  });

  test.each(how === 'threads' ? CASES : CASES.filter((_case, i) => i % 5 === 0))('%s is found as on one thread', async (_what, sql) => {
    const casebook = tampered(await made(MANY), sql);
    const verified = await verify(casebook, { at: AT });
    expect(verified).toEqual(await verifyOnThisThread(casebook, { at: AT }));
    expect(verified!.sound).toBe(false);
    casebook.close();
  });

  test('it can be stopped, and a casebook that is closed meanwhile gives no answer', async () => {
    const { casebook } = await made(MANY);
    const stop = new AbortController();
    const asked = verify(casebook, { at: AT, signal: stop.signal });
    setTimeout(() => { stop.abort(); }, 5);
    expect(await asked).toBeNull();
    const closed = verify(casebook, { at: AT });
    setTimeout(() => { casebook.close(); }, 5);
    expect(await closed).toBeNull();
  });

  test('where no thread can read the file, this one does', async () => {
    const { casebook, file } = await made();
    const elsewhere: typeof casebook = { ...casebook, still: (work) => casebook.still(() => work(`${file}.not-there`)) };
    expect(await verify(elsewhere, { at: AT })).toMatchObject({ sound: true });
    casebook.close();
  });
});

/** Processes that were started with the entry of a helper by this one. Linux alone tells. */
function helpersNow(): number[] {
  return readdirSync('/proc').map(Number).filter((pid) => {
    try {
      return Number.isInteger(pid) && readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(ENTRY) && readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]!.split(' ')[1] === String(process.pid);
    } catch {
      return false;
    }
  });
}

describe.runIf(process.platform === 'linux')('a helping process', () => {
  test('that is ended from outside is told of, and the work is done without it', async () => {
    const { casebook } = await made(MANY);
    const noted: string[] = [];
    let alone = 0;
    const verify = createVerifyWithHelpers({ workerFile: WORKER, program: { file: process.execPath, args: [ENTRY], from: 0 }, note: (what, { why }) => { noted.push(`${what}: ${String(why)}`); } });
    const asked = verify(casebook, { at: AT, alone: () => { alone += 1; } });
    let ended = 0;
    for (let i = 0; i < 1000 && ended === 0; i++) {
      await new Promise((resolve) => { setTimeout(resolve, 5); });
      for (const pid of helpersNow()) { process.kill(pid, 'SIGKILL'); ended += 1; }
    }
    expect(ended).toBeGreaterThan(0);
    expect(await asked).toEqual(await verifyOnThisThread(casebook, { at: AT }));
    expect([alone, noted]).toEqual([1, ['verifying goes on without helpers: a helping process was ended (SIGKILL)']]);
    expect(helpersNow()).toEqual([]);
    casebook.close();
  });

  test('leaves none behind when it was stopped', async () => {
    const { casebook } = await made();
    const stop = new AbortController();
    const asked = inProcesses(casebook, { at: AT, signal: stop.signal });
    setTimeout(() => { stop.abort(); }, 300);
    await asked;
    expect(helpersNow()).toEqual([]);
    casebook.close();
  });
});

test('a program that can’t be started is told of, and the work is done without it', async () => {
  const { casebook } = await made();
  const noted: string[] = [];
  const verify = createVerifyWithHelpers({ workerFile: WORKER, program: { file: `${process.execPath}-not-there`, args: [], from: 0 }, note: (what, { why }) => { noted.push(`${what}: ${String(why)}`); } });
  expect(await verify(casebook, { at: AT })).toMatchObject({ sound: true });
  expect(noted).toEqual([expect.stringMatching(/^verifying goes on without helpers: a helping process could not be started \(/)]);
  casebook.close();
});

/** How a helper ends that is sent these bytes, and what it answered. */
function helperSent(bytes: Buffer | null): Promise<{ code: number | null; answered: number }> {
  const child = spawn(process.execPath, [ENTRY], { stdio: ['ignore', 'ignore', 'ignore', bytes === null ? 'ignore' : 'pipe'] });
  const pipe = child.stdio[3] as Duplex | null;
  let answered = 0;
  pipe?.on('data', (more: Buffer) => { answered += more.byteLength; });
  pipe?.on('error', () => {});
  pipe?.end(bytes);
  return new Promise((resolve) => { child.on('close', (code) => { resolve({ code, answered }); }); });
}

describe('a process that is started as a helper and is not asked as one', () => {
  test.each([
    ['is given no pipe', null],
    ['hears nothing', Buffer.alloc(0)],
    ['hears text', Buffer.from('SELECT * FROM person')],
    ['is told of a length that nothing has', Buffer.from([0xff, 0xff, 0xff, 0xff, 1])],
    ['is sent a piece before a file', frameOf({ job: 1, piece: { kind: 'count' } })],
    ['is told something else', frameOf({ run: 'x' })],
  ])('%s: it ends without a word', async (_what, bytes) => {
    expect(await helperSent(bytes)).toEqual({ code: 2, answered: 0 });
  });

  test('is asked for what is no piece: it opens the file and ends', async () => {
    const { casebook, file } = await made();
    casebook.close();
    const sent = await helperSent(Buffer.concat([frameOf({ open: { file, still: false } }), frameOf({ job: 1, piece: { kind: 'sql', sql: 'SELECT 1' } })]));
    expect(sent).toEqual({ code: 2, answered: frameOf({ kind: 'ready' }).byteLength });
  });

  test('is let go of: it ends well', async () => {
    const { casebook, file } = await made();
    casebook.close();
    expect((await helperSent(frameOf({ open: { file, still: false } }))).code).toBe(0);
  });
});
