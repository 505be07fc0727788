import BetterSqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { canonicalJson, type JsonValue } from '../../../app/custody/canonical-json.ts';
import { entryHash, GENESIS } from '../../../app/custody/chain.ts';
import { openCasebook } from '../../../db/open-casebook.ts';
import { intake, madeCasebook, type MadeCasebook } from '../../unit/db/made-casebook.ts';

type Entry = { seq: number; at: string; person_id: string | null; operation: string; subject: string; case_id: string | null; content: string };

/** Works on the file with the guards away, and puts them back as they were. */
function byHand(file: string, work: (tool: BetterSqlite.Database) => void): void {
  const tool = new BetterSqlite(file);
  tool.pragma('foreign_keys = OFF');
  const guards = tool.prepare(`SELECT name, sql FROM sqlite_master WHERE type = 'trigger'`).all() as { name: string; sql: string }[];
  for (const { name } of guards) tool.exec(`DROP TRIGGER ${name}`);
  work(tool);
  for (const { sql } of guards) tool.exec(sql);
  tool.close();
}

/** The audit ledger as a version wrote it that did not vouch for rows. */
function withoutVouchers(tool: BetterSqlite.Database): void {
  let previous = GENESIS;
  for (const row of tool.prepare('SELECT * FROM audit_entry ORDER BY seq').all() as Entry[]) {
    const { rows: _rows, ...content } = JSON.parse(row.content) as Record<string, JsonValue>;
    const hash = entryHash(previous, { seq: row.seq, at: row.at, person: row.person_id, operation: row.operation, subject: row.subject, case: row.case_id, content });
    tool.prepare('UPDATE audit_entry SET content = ?, previous = ?, hash = ? WHERE seq = ?').run(canonicalJson(content), previous, hash, row.seq);
    previous = hash;
  }
}

async function verified({ options }: MadeCasebook) {
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  const outcome = await opened.value.ledgers.verify({ at: 'now' });
  opened.value.close();
  return { sound: outcome!.sound, rows: outcome!.parts.find((part) => part.part === 'facts and findings')! };
}

async function takeInOne({ options, deps, personId }: MadeCasebook): Promise<void> {
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  const taken = await opened.value.cases.takeIn({ at: deps.now().toISOString(), personId, operation: 'cases.takeIn' }, intake());
  expect(taken.ok).toBe(true);
  opened.value.close();
}

test('records of an older version are counted and no fault; from the first entry that vouches on, the new ones are', async () => {
  const made = await madeCasebook();
  made.casebook.close();
  await takeInOne(made);
  byHand(made.file, withoutVouchers);
  const before = await verified(made);
  expect(before).toMatchObject({ sound: true, rows: { checked: 0, fault: null, note: expect.stringMatching(/^\d+ records were written before the audit ledger vouched for records: not vouched for, and so not compared\.$/) as string } });

  await takeInOne(made);
  const after = await verified(made);
  expect(after).toMatchObject({ sound: true, rows: { note: before.rows.note } });
  expect(after.rows.checked).toBeGreaterThan(0);

  byHand(made.file, (tool) => { tool.exec(`INSERT INTO client SELECT 'foreign', name, address, email, phone, note, created_at FROM client LIMIT 1`); });
  expect((await verified(made)).rows.fault).toMatch(/^The client “.+” is not named in the audit ledger: it was put in from outside\.$/);
});

test('an older record that is changed through the program is vouched for from then on', async () => {
  const made = await madeCasebook();
  made.casebook.close();
  await takeInOne(made);
  byHand(made.file, withoutVouchers);
  const opened = openCasebook(made.options);
  if (!opened.ok) throw new Error(opened.error.message);
  const caseId = opened.value.handle.read.get<{ id: string }>('SELECT id FROM case_record')!.id;
  expect((await opened.value.cases.amend({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'cases.amend' }, { caseId, asks: 'origin', dueOn: null, remarks: '' })).ok).toBe(true);
  opened.value.close();
  expect(await verified(made)).toMatchObject({ sound: true, rows: { checked: 1 } });
  byHand(made.file, (tool) => { tool.exec(`UPDATE case_record SET asks = 'something else'`); });
  expect((await verified(made)).rows.fault).toContain('was changed behind the program’s back');
});

test('with a ledger that does not hold, nothing is said of the rows', async () => {
  const made = await madeCasebook();
  made.casebook.close();
  byHand(made.file, (tool) => { tool.exec(`UPDATE audit_entry SET operation = 'other' WHERE seq = 1`); });
  expect(await verified(made)).toMatchObject({ sound: false, rows: { checked: 0, sound: true, note: 'Not compared: the audit ledger, which vouches for them, does not hold.' } });
});
