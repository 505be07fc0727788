import BetterSqlite from 'better-sqlite3';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Verification } from '../../../app/contract/casebook.ts';
import { fold } from '../../../db/fold.ts';
import { createHandle } from '../../../db/handle.ts';
import { VOUCHED_TABLES } from '../../../db/ledger/vouched-tables.ts';
import { openCasebook, type Casebook } from '../../../db/open-casebook.ts';
import { createCalibrationsStore } from '../../../db/store/calibrations.ts';
import { createReportHouseStore } from '../../../db/store/report-house.ts';
import { createReportsStore } from '../../../db/store/reports.ts';
import { layoutPiece } from '../../../db/verify/layout.ts';
import { verifyAudit, verifyCustody, type Vouched } from '../../../db/verify/ledgers.ts';
import { runInTurn } from '../../../db/verify/pieces.ts';
import { verifyRows } from '../../../db/verify/rows.ts';
import { createBuildDemonstration } from '../../../main/demonstration/build-demonstration.ts';
import { createSeededIds } from '../../../main/demonstration/seeded-ids.ts';
import { createInlinePool } from '../../../main/workers/inline-pool.ts';
import { fillEmptyTables } from './row-of-every-table.ts';
import { MIGRATIONS, temporaryFolder } from '../../unit/db/made-casebook.ts';

const NOW = new Date('2027-01-11T10:00:00.000Z');
const file = path.join(temporaryFolder(), 'Demonstration.culet');
const options = { file, mustExist: false, migrationsFolder: MIGRATIONS, now: () => NOW, newId: createSeededIds(1, () => NOW) };

/** The demonstration holds a row of every kind but this one and those below. */
async function addCalibration(casebook: Casebook): Promise<void> {
  const { instrumentId, personId } = casebook.handle.read.get<{ instrumentId: string; personId: string }>('SELECT instrument_id AS instrumentId, person_id AS personId FROM instrument_check')!;
  const fit = {
    standard: 'invented lamp', unit: 'nm' as const, degree: 1, middle: 600, half: 200, coefficients: [0, 0], covariance: [0, 0, 0, 0], range: [400, 800] as [number, number], lines: [],
    residualRms: 0, leaveOneOutRms: 0, misfit: 0, deviationRms: 0, largestDeviation: 0, fwhm: 0.5,
  };
  await createCalibrationsStore(casebook.handle, createSeededIds(2, () => NOW)).keep({ at: NOW.toISOString(), personId, operation: 'instruments.calibrate' }, {
    instrumentId, standard: 'invented lamp', fit, use: 'note', error: 0.1, fileName: 'lamp.txt', fileSha256: '0'.repeat(64), passed: true, reference: 'invented lamp', outcome: 'fits',
  });
}

/** A text, a template, an authorisation of the laboratory, and a withdrawn report. */
async function addReportHouse(casebook: Casebook): Promise<void> {
  const newId = createSeededIds(3, () => NOW);
  const { personId, reportId } = casebook.handle.read.get<{ personId: string; reportId: string }>('SELECT issued_by AS personId, id AS reportId FROM report ORDER BY revision DESC')!;
  const change = { at: NOW.toISOString(), personId, operation: 'houseTexts.write' };
  const house = createReportHouseStore(casebook.handle, newId);
  const [template] = await house.templates();
  await house.writeText(change, { kind: 'disclaimer', text: 'Invented.', note: 'for this test' });
  await house.saveTemplate(change, template!.templateId, template!.content);
  await house.authorise(change, { holderId: personId, kinds: ['case'], since: '2026-01-01', note: 'invented' });
  await createReportsStore(casebook.handle, newId).withdraw(change, reportId, 'invented');
}

let tool: BetterSqlite.Database;
let vouched: Vouched;
const noPace = async (): Promise<void> => {};

beforeAll(async () => {
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  await createBuildDemonstration({ pool: createInlinePool(), now: () => NOW })(opened.value, () => {});
  await addCalibration(opened.value);
  await addReportHouse(opened.value);
  await fillEmptyTables(opened.value, NOW.toISOString());
  opened.value.close();
  tool = new BetterSqlite(file);
  tool.function('fold', { deterministic: true }, (text) => (typeof text === 'string' ? fold(text) : null));
  tool.pragma('foreign_keys = OFF');
  const { read } = createHandle(tool);
  vouched = (await verifyAudit(layoutPiece(read), runInTurn(read, noPace))).vouched;
}, 120_000);

afterAll(() => { tool.close(); });

/** What is said of the rows after someone took the guards away and worked on the file by hand; undone afterwards. */
async function faultAfter(...statements: string[]): Promise<string | null> {
  tool.exec('BEGIN');
  try {
    for (const { name } of tool.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger'`).all() as { name: string }[]) tool.exec(`DROP TRIGGER ${name}`);
    for (const sql of statements) tool.exec(sql);
    const { read } = createHandle(tool);
    return (await verifyRows(layoutPiece(read), vouched, runInTurn(read, noPace))).fault;
  } finally {
    tool.exec('ROLLBACK');
  }
}

const dropIndexes = (table: string): string[] =>
  (tool.prepare(`SELECT name FROM sqlite_master WHERE type = 'index' AND tbl_name = ? AND sql IS NOT NULL`).pluck().all(table) as string[]).map((name) => `DROP INDEX ${name}`);

/** Another value in every column of the first row: what a person would not notice is enough. */
const changedColumn = (table: string, column: string): string =>
  `UPDATE ${table} SET ${column} = CASE typeof(${column}) WHEN 'integer' THEN ${column} + 1 WHEN 'real' THEN ${column} * 1.0001 WHEN 'blob' THEN CAST(${column} || x'00' AS BLOB) WHEN 'null' THEN ${column === 'logo' ? `x'00'` : '1'} ELSE ${column} || ' ' END
   WHERE rowid = (SELECT min(rowid) FROM ${table})`;

const TABLES = VOUCHED_TABLES.map(({ table, columns }) => ({ table, columns: columns.filter((column) => column !== 'id') }));

describe('rows that the audit ledger vouches for', () => {
  test('every row of the demonstration is vouched for, and fits', async () => {
    expect(await faultAfter()).toBeNull();
    const held = TABLES.reduce((sum, { table }) => sum + (tool.prepare(`SELECT count(*) FROM ${table}`).pluck().get() as number), 0);
    expect(vouched.rows.size).toBe(held);
    for (const { table } of TABLES) expect([table, tool.prepare(`SELECT count(*) FROM ${table}`).pluck().get()]).not.toEqual([table, 0]);
  });

  test.each(TABLES)('$table: a changed value in any column is found', async ({ table, columns }) => {
    for (const column of columns) expect([column, await faultAfter(...dropIndexes(table), changedColumn(table, column))]).toEqual([column, expect.stringContaining('was changed behind the program’s back')]);
  }, 60_000);

  test.each(TABLES)('$table: a row taken out, and one put in, are found', async ({ table }) => {
    expect(await faultAfter(`DELETE FROM ${table} WHERE rowid = (SELECT max(rowid) FROM ${table})`)).toMatch(/is no longer there/);
    const all = (tool.pragma(`table_info(${table})`) as { name: string }[]).map((column) => column.name);
    const copy = `INSERT INTO ${table} SELECT ${all.map((column) => (column === 'id' ? (table === 'laboratory' ? '2' : `'foreign'`) : column)).join(', ')} FROM ${table} LIMIT 1`;
    expect(await faultAfter(...dropIndexes(table), copy)).toMatch(/is not named in the audit ledger: it was put in from outside\.$/);
  }, 60_000);
});

describe('numbers that are given out', () => {
  const year = `(SELECT max(year) FROM number_counter WHERE kind = 'report')`;
  test.each([
    ['a report counter put forward', `UPDATE number_counter SET last = last + 3 WHERE kind = 'report' AND year = ${year}`, /^The counter of report numbers of \d{4} stands at \d+, and the newest report is S-.*would leave a gap\.$/],
    ['a report counter put back', `UPDATE number_counter SET last = last - 1 WHERE kind = 'report' AND year = ${year}`, /^The counter of report numbers .*would be one that was given out\.$/],
    ['a case counter taken out', `DELETE FROM number_counter WHERE kind = 'case'`, /^The counter of case numbers of \d{4} stands at 0, and the newest case is C-/],
    ['one for a year without records', `INSERT INTO number_counter VALUES ('report', 2199, 4)`, /^The counter of report numbers of 2199 stands at 4, and there is no report/],
    ['one of another kind', `INSERT INTO number_counter VALUES ('invoice', 2026, 1)`, /^There is a counter of numbers of the kind “invoice”/],
  ])('%s is found', async (_what, sql, sentence) => {
    expect(await faultAfter(sql)).toMatch(sentence);
  });
});

describe('what is said', () => {
  test('a person can find the row', async () => {
    expect(await faultAfter(`UPDATE conclusion SET conclusion = 'grown-cvd' WHERE conclusion = 'natural'`)).toMatch(/^The conclusion \d of stone [A-Z]+-\d+ of case C-\d{4}-\d{4} was changed behind the program’s back: it is not what entry \d+ of the audit ledger vouches for\.$/);
    expect(await faultAfter('UPDATE confirmation SET agrees = 1 - agrees')).toMatch(/^The confirmation of conclusion \d of stone [A-Z]+-\d+ of case/);
    expect(await faultAfter(`UPDATE finding SET state = 'set-aside' WHERE state = 'accepted'`)).toMatch(/^The finding “.+” of stone [A-Z]+-\d+ of case/);
    expect(await faultAfter('UPDATE item SET gross_weight = gross_weight + 1000')).toMatch(/^The item [A-Z]+ of case/);
    expect(await faultAfter(`UPDATE person SET name = 'Zed'`)).toMatch(/^The person “Zed” was changed/);
    expect(await faultAfter('DELETE FROM photograph')).toMatch(/^A photograph that entry \d+ of the audit ledger vouches for is no longer there \(/);
  });

  test('the end of the audit ledger cut off together with SQLite’s count of it is found by the rows', async () => {
    const last = tool.prepare(`SELECT max(seq) FROM audit_entry`).pluck().get() as number;
    tool.exec('BEGIN');
    for (const { name } of tool.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger'`).all() as { name: string }[]) tool.exec(`DROP TRIGGER ${name}`);
    tool.exec(`DELETE FROM audit_entry WHERE seq = ${last}; UPDATE sqlite_sequence SET seq = ${last - 1} WHERE name = 'audit_entry'`);
    const { read } = createHandle(tool);
    const inTurn = runInTurn(read, noPace);
    const layout = layoutPiece(read);
    const { part: audit, vouched: shorter, heads } = await verifyAudit(layout, inTurn);
    const custody = await verifyCustody(layout, heads, inTurn);
    const rows = await verifyRows(layout, shorter, inTurn);
    tool.exec('ROLLBACK');
    expect([custody.sound, audit.sound]).toEqual([true, true]);
    expect(rows.fault).toContain('put in from outside');
  });

  test('the guards lifted and put back as they were: the whole check names the row', async () => {
    const guards = tool.prepare(`SELECT name, sql FROM sqlite_master WHERE type = 'trigger'`).all() as { name: string; sql: string }[];
    const edit = (sql: string): void => {
      for (const { name } of guards) tool.exec(`DROP TRIGGER ${name}`);
      tool.exec(sql);
      for (const guard of guards) tool.exec(guard.sql);
    };
    const verified = async (): Promise<Verification> => {
      const opened = openCasebook({ ...options, mustExist: true, readOnly: true });
      if (!opened.ok) throw new Error(opened.error.message);
      const outcome = await opened.value.ledgers.verify({ at: NOW.toISOString() });
      opened.value.close();
      return outcome!;
    };
    expect((await verified()).sound).toBe(true);
    edit(`UPDATE stone SET colour_class = colour_class || 'x'`);
    expect((await verified()).parts.filter((part) => !part.sound).map((part) => part.part)).toEqual(['facts and findings']);
    edit(`UPDATE stone SET colour_class = substr(colour_class, 1, length(colour_class) - 1)`);
    expect((await verified()).sound).toBe(true);
  });
});
