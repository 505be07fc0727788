import BetterSqlite from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { expectedGuards, guardedTables } from '../../../db/guards.ts';
import { openCasebook } from '../../../db/open-casebook.ts';
import { intake, madeCasebook, type MadeCasebook } from './made-casebook.ts';

/** One row in each guarded table that intake does not fill, written as other stores would. */
const ROWS = `
  INSERT INTO raw_record VALUES ('raw', (SELECT id FROM case_record), 'd', 'n', 't', 1, 'stored', x'00', 'at', (SELECT id FROM person));
  INSERT INTO test_run VALUES ('run', (SELECT id FROM case_record), (SELECT id FROM stone), 1, 'raman', NULL, 'no-instrument', NULL, NULL, NULL, NULL, '[]', NULL, '', 'at', (SELECT id FROM person));
  INSERT INTO run_file VALUES ('file', 'run', 'raw', 'read', 'f', 'r', '[]', NULL);
  INSERT INTO spectrum VALUES ('spectrum', 'run', 'file', 0, '', 'nm', 'counts', 0, 0, x'', x'', 'd');
  INSERT INTO analysis VALUES ('analysis', 'spectrum', 'p', 't', '{}', '{}', 'at', (SELECT id FROM person));
  INSERT INTO finding VALUES ('finding', (SELECT id FROM case_record), (SELECT id FROM stone), 'run', 'analysis', 'analysis', 'c', 's', 'strong', 'diamond', 'raman', '', '', 'proposed', '', NULL, NULL, 'at');
  INSERT INTO conclusion VALUES ('conclusion', (SELECT id FROM case_record), (SELECT id FROM stone), 1, 'undetermined', '', '{}', 'r', '[]', '', (SELECT id FROM person), 'at');
  INSERT INTO second_reading VALUES ('reading', 'conclusion', (SELECT id FROM person), 'natural', 'at');
  INSERT INTO confirmation VALUES ('confirmation', 'conclusion', (SELECT id FROM person), 1, '', 'at', NULL, NULL);
  INSERT INTO report VALUES ('report', (SELECT id FROM case_record), 'S-1', 1, '{}', 'd', x'00', 'd', 'at', (SELECT id FROM person), NULL, NULL, NULL, NULL);
  INSERT INTO instrument VALUES ('instrument', 'n', '[]', '', '', '{}', 30, 1, 'at');
  INSERT INTO instrument_check VALUES ('check', 'instrument', 'at', (SELECT id FROM person), 1, 'r', 'o', NULL, NULL, NULL, NULL, NULL, NULL);
  INSERT INTO calibration VALUES ('calibration', 'instrument', 'at', (SELECT id FROM person), 'check', 's', 'nm', 'note', 0.1, 'f', 'd', '{}');
  INSERT INTO photograph VALUES ('photograph', (SELECT id FROM case_record), NULL, NULL, 'raw', '', 'white', 'at');
  INSERT INTO piece_map VALUES ('map', (SELECT id FROM case_record), (SELECT id FROM item), 1);
  INSERT INTO piece_map_version VALUES ('version', (SELECT id FROM case_record), 'map', 1, 'front', NULL, '{}', '[]', 0, 'at', (SELECT id FROM person));
  INSERT INTO picture_view VALUES ('view', (SELECT id FROM case_record), 'photograph', 1, '{}', 'at', (SELECT id FROM person));
  INSERT INTO photo_analysis VALUES ('photo', (SELECT id FROM case_record), (SELECT id FROM item), 'pair', 'v', '{}', '{}', 'at', (SELECT id FROM person));
  INSERT INTO photo_analysis_run VALUES ('photo-run', (SELECT id FROM case_record), 'photo', (SELECT id FROM stone), 'run');
  INSERT INTO signing_key VALUES ('key', 'p', 'at', (SELECT id FROM person), '');
  INSERT INTO checkpoint VALUES ('checkpoint', 'at', '{}', 'key', 's');
  INSERT INTO key_store_choice VALUES ('choice', 'at', (SELECT id FROM person), 0, 'r');
  INSERT INTO known_sample VALUES ('sample', 'KS-1', 'natural', 'b', 'at', (SELECT id FROM person));
  INSERT INTO known_sample_withdrawal VALUES ('gone', 'sample', 'r', 'at', (SELECT id FROM person), NULL);
  INSERT INTO known_sample_trial VALUES ('trial', 'sample', (SELECT id FROM stone), 'natural', (SELECT id FROM person), 'at', 1, '', 'at', (SELECT id FROM person), NULL);
  INSERT INTO known_sample_trial_withdrawal VALUES ('taken-back', 'trial', 'r', 'at', (SELECT id FROM person));
  INSERT INTO sealed_bundle_piece VALUES ('bundle/0', 'bundle', 0, x'00');
  INSERT INTO sealed_bundle VALUES ('bundle', 'n', 'l', 'authentic', 'f', '', '{}', 1, x'00', 'at', (SELECT id FROM person));
  INSERT INTO lot_record VALUES ('lot', (SELECT id FROM case_record), (SELECT id FROM item), 1, 'count', '{}', 'at', (SELECT id FROM person));
  INSERT INTO house_text VALUES ('text', 'scope', 1, 't', '', 'at', (SELECT id FROM person));
  INSERT INTO report_template VALUES ('template', 'case', 1, '{}', 'at', (SELECT id FROM person));
  INSERT INTO report_withdrawal VALUES ('withdrawal', 'report', 'r', 'at', (SELECT id FROM person));
  INSERT INTO signing_authorisation VALUES ('authorisation', (SELECT id FROM person), 1, '[]', '2026-01-01', '', 'at', (SELECT id FROM person));
  INSERT INTO weight_record VALUES ('weight', (SELECT id FROM case_record), (SELECT id FROM item), NULL, '{}', 'at', (SELECT id FROM person));
`;

let made: MadeCasebook;
let outside: BetterSqlite.Database;

beforeAll(async () => {
  made = await madeCasebook();
  await made.casebook.cases.takeIn({ at: made.deps.now().toISOString(), personId: made.personId, operation: 'cases.takeIn' }, intake());
  made.casebook.close();
  // Another tool, with the defaults of SQLite: recursive_triggers off.
  outside = new BetterSqlite(made.file);
  outside.exec(ROWS);
});
afterAll(() => { outside.close(); });

describe('evidence only grows, whoever writes', () => {
  test('every guarded table has three triggers and at least one row to test with', () => {
    expect(expectedGuards()).toHaveLength(guardedTables().length * 3);
    for (const table of guardedTables()) expect(outside.prepare(`SELECT count(*) AS n FROM ${table}`).get(), table).not.toEqual({ n: 0 });
  });
  test.each(guardedTables())('%s refuses DELETE, UPDATE and INSERT OR REPLACE', (table) => {
    const column = table === 'finding' ? 'statement' : (outside.prepare(`SELECT name FROM pragma_table_info('${table}') WHERE pk = 0 LIMIT 1`).get() as { name: string }).name;
    const before = outside.prepare(`SELECT * FROM ${table}`).all();
    expect(() => outside.exec(`DELETE FROM ${table}`)).toThrow('only grows');
    expect(() => outside.exec(`UPDATE ${table} SET ${column} = ${column}`)).toThrow('only grows');
    expect(() => outside.exec(`INSERT OR REPLACE INTO ${table} SELECT * FROM ${table}`)).toThrow('only grows');
    expect(outside.prepare(`SELECT * FROM ${table}`).all()).toEqual(before);
  });
  test('a row can’t be replaced through another unique key or its row number', () => {
    const report = `case_id, number, revision, model, model_digest, pdf, pdf_sha256, issued_at, issued_by`;
    expect(() => outside.exec(`INSERT OR REPLACE INTO report (id, ${report}) SELECT 'forged', ${report} FROM report`)).toThrow('only grows');
    expect(() => outside.exec(`INSERT OR REPLACE INTO report (rowid, id, ${report}) SELECT rowid, 'forged', case_id, 'S-2', revision, model, model_digest, pdf, pdf_sha256, issued_at, issued_by FROM report`)).toThrow('only grows');
    expect(() => outside.exec(`UPDATE OR REPLACE conclusion SET ordinal = 1`)).toThrow('only grows');
  });
  test('a finding may be decided, and nothing else of it changed', () => {
    outside.exec(`UPDATE finding SET state = 'accepted', reason = 'seen', decided_by = (SELECT id FROM person), decided_at = 'at'`);
    expect(outside.prepare('SELECT state FROM finding').get()).toEqual({ state: 'accepted' });
    expect(() => outside.exec(`UPDATE finding SET state = 'set-aside', supports = 'natural'`)).toThrow('only grows');
  });
});

test('the columns of a finding that may not change are all but four', () => {
  const all = (outside.prepare(`SELECT name FROM pragma_table_info('finding')`).all() as { name: string }[]).map((c) => c.name);
  const guard = expectedGuards().find((g) => g.name === 'finding_no_update')!.sql;
  for (const column of all) expect(new RegExp(`[ ,]${column}[ ,]`).test(guard.split(' ON ')[0]! + ' '), column).toBe(!['state', 'reason', 'decided_by', 'decided_at'].includes(column));
});

test('guards taken away or weakened from outside are put back and named', async () => {
  const { casebook, file, options } = await madeCasebook();
  casebook.close();
  const tool = new BetterSqlite(file);
  tool.exec(`DROP TRIGGER report_no_update; DROP TRIGGER audit_entry_no_delete; CREATE TRIGGER audit_entry_no_delete BEFORE DELETE ON audit_entry BEGIN SELECT 1; END`);
  tool.close();
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  expect([...opened.value.guardsRestored].sort()).toEqual(['audit_entry_no_delete', 'report_no_update']);
  expect((await opened.value.ledgers.verify({ at: 'now' }))!.parts.find((part) => part.part === 'guards')).toMatchObject({ sound: false, fault: expect.stringContaining('put back') as string });
  opened.value.close();
  const again = openCasebook(options);
  expect(again.ok && again.value.guardsRestored).toEqual([]);
  if (again.ok) again.value.close();
});
