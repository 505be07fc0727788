import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { expectedGuards } from '../../../../db/guards.ts';
import { appendAudit } from '../../../../db/ledger/append-audit.ts';
import { intake, madeCasebook } from '../made-casebook.ts';

async function withCases(count: number) {
  const made = await madeCasebook();
  for (let i = 0; i < count; i++) await made.casebook.cases.takeIn({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'cases.takeIn' }, intake());
  return made;
}

test('what was checked is counted, with the heads of both ledgers', async () => {
  const { casebook } = await withCases(3);
  const verified = await casebook.ledgers.verify({ at: '2026-03-02T10:00:00.000Z' });
  const head = casebook.handle.read.get<{ hash: string }>('SELECT hash FROM custody_entry ORDER BY seq DESC LIMIT 1')!.hash;
  expect(verified).toMatchObject({ sound: true, at: '2026-03-02T10:00:00.000Z' });
  const tables = casebook.handle.read.get<{ n: number }>(`SELECT count(*) AS n FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND sql NOT LIKE 'CREATE VIRTUAL TABLE%'`)!.n;
  expect(verified!.parts.map((part) => [part.part, part.checked])).toEqual([
    ['custody ledger', 6], ['audit ledger', 8], ['raw records', 0], ['spectra', 0], ['issued reports', 0], ['bundles taken in', 0], ['facts and findings', 17], ['checkpoints', 0], ['guards', expectedGuards().length], ['database', tables]]);
  expect(verified!.parts[0]!.head).toBe(head);
  casebook.close();
});

test('other work goes on meanwhile, progress rises, and it can be stopped', async () => {
  const { casebook } = await withCases(400);
  let others = 0;
  const timer = setInterval(() => { others += 1; }, 1);
  const steps: number[] = [];
  expect((await casebook.ledgers.verify({ at: 'now', progress: (done, total) => { steps.push(done / total); } }))!.sound).toBe(true);
  clearInterval(timer);
  expect(others).toBeGreaterThan(0);
  expect(steps.length).toBeGreaterThan(1);
  expect(steps).toEqual([...steps].sort((a, b) => a - b));
  expect(Math.max(...steps)).toBeLessThanOrEqual(1);
  const stop = new AbortController();
  stop.abort();
  expect(await casebook.ledgers.verify({ at: 'now', signal: stop.signal })).toBeNull();
  casebook.close();
});

test('a spectrum whose points no longer give its digest is named with its run', async () => {
  const { casebook, personId } = await withCases(1);
  const x = Buffer.alloc(16, 1);
  const digest = createHash('sha256').update(x).update(x).digest('hex');
  await casebook.handle.transact((tx) => {
    const one = tx.get<{ case_id: string; id: string }>('SELECT case_id, id FROM stone')!;
    tx.run(`INSERT INTO raw_record VALUES ('raw', ?, 'd', 'n', 't', 0, 'stored', x'', 'at', ?)`, [one.case_id, personId]);
    tx.run(`INSERT INTO test_run VALUES ('run', ?, ?, 4, 'raman', NULL, 'no-instrument', NULL, NULL, NULL, NULL, '[]', NULL, '', 'at', ?)`, [one.case_id, one.id, personId]);
    tx.run(`INSERT INTO run_file VALUES ('file', 'run', 'raw', 'read', 'f', 'r', '[]', NULL)`);
    appendAudit(tx, { at: 'at', personId, operation: 'runs.record' }, { subject: 'run', caseId: one.case_id, content: { digests: { good: digest, bad: digest } } });
    tx.run(`INSERT INTO spectrum VALUES ('good', 'run', 'file', 0, 'first', 'nm', 'counts', 0, 2, ?, ?, ?)`, [x, x, digest]);
    tx.run(`INSERT INTO spectrum VALUES ('bad', 'run', 'file', 1, 'second', 'nm', 'counts', 0, 2, ?, ?, ?)`, [x, Buffer.alloc(16, 2), digest]);
    tx.written.forget();
  });
  const parts = (await casebook.ledgers.verify({ at: 'now' }))!.parts;
  expect(parts.find((part) => part.part === 'spectra')).toMatchObject({ checked: 1, sound: false, fault: 'The spectrum “second” of run R4 was changed: its points no longer give its digest.' });
  casebook.close();
});

test('a spectrum that the audit ledger does not name was put in from outside', async () => {
  const { casebook, personId } = await withCases(1);
  const none = createHash('sha256').digest('hex');
  await casebook.handle.transact((tx) => {
    const one = tx.get<{ case_id: string; id: string }>('SELECT case_id, id FROM stone')!;
    tx.run(`INSERT INTO raw_record VALUES ('raw', ?, ?, 'n', 't', 0, 'stored', x'', 'at', ?)`, [one.case_id, none, personId]);
    tx.run(`INSERT INTO test_run VALUES ('run', ?, ?, 1, 'raman', NULL, 'no-instrument', NULL, NULL, NULL, NULL, '[]', NULL, '', 'at', ?)`, [one.case_id, one.id, personId]);
    tx.run(`INSERT INTO run_file VALUES ('file', 'run', 'raw', 'read', 'f', 'r', '[]', NULL)`);
    tx.run(`INSERT INTO spectrum VALUES ('foreign', 'run', 'file', 0, 'foreign', 'nm', 'counts', 0, 0, x'', x'', ?)`, [none]);
    tx.written.forget();
  });
  const parts = (await casebook.ledgers.verify({ at: 'now' }))!.parts;
  for (const name of ['spectra', 'raw records']) expect(parts.find((part) => part.part === name)).toMatchObject({ sound: false, fault: expect.stringContaining('put in from outside') as string });
  casebook.close();
});
