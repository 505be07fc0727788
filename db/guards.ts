import type Database from 'better-sqlite3';

/** A table whose rows are evidence, and the columns that make a row the same row again. */
type Guarded = {
  readonly table: string;
  /** Other unique keys beside the primary key: INSERT OR REPLACE would delete the row that holds one. */
  readonly keys: readonly (readonly string[])[];
  readonly primary: 'id' | 'seq';
  /** Columns that may change after writing; empty: none. */
  readonly mayChange: readonly string[];
  /** Needed only where some columns may change. */
  readonly columns?: readonly string[];
  /** Rows are written before what they belong to and are evidence from then on: SQL that is true for such a row, here called ROW. No row may be added to it either. */
  readonly once?: string;
};

const FINDING_FACTS = [
  'id', 'case_id', 'stone_id', 'run_id', 'analysis_id', 'origin', 'code', 'statement', 'strength', 'supports', 'method', 'caution', 'source', 'created_at',
] as const;

const GUARDED: readonly Guarded[] = [
  { table: 'custody_entry', primary: 'seq', keys: [], mayChange: [] },
  { table: 'audit_entry', primary: 'seq', keys: [], mayChange: [] },
  { table: 'report', primary: 'id', keys: [['number', 'revision']], mayChange: [] },
  { table: 'raw_record', primary: 'id', keys: [], mayChange: [] },
  { table: 'test_run', primary: 'id', keys: [['case_id', 'number']], mayChange: [] },
  { table: 'run_file', primary: 'id', keys: [], mayChange: [] },
  { table: 'spectrum', primary: 'id', keys: [], mayChange: [] },
  { table: 'analysis', primary: 'id', keys: [], mayChange: [] },
  { table: 'conclusion', primary: 'id', keys: [['stone_id', 'ordinal']], mayChange: [] },
  { table: 'second_reading', primary: 'id', keys: [['conclusion_id', 'person_id']], mayChange: [] },
  { table: 'confirmation', primary: 'id', keys: [['conclusion_id']], mayChange: [] },
  { table: 'calibration', primary: 'id', keys: [], mayChange: [] },
  { table: 'piece_map', primary: 'id', keys: [['item_id', 'ordinal']], mayChange: [] },
  { table: 'piece_map_version', primary: 'id', keys: [['map_id', 'version']], mayChange: [] },
  { table: 'picture_view', primary: 'id', keys: [['photograph_id', 'version']], mayChange: [] },
  { table: 'photo_analysis', primary: 'id', keys: [], mayChange: [] },
  { table: 'photo_analysis_run', primary: 'id', keys: [], mayChange: [] },
  { table: 'signing_key', primary: 'id', keys: [], mayChange: [] },
  { table: 'key_store_choice', primary: 'id', keys: [], mayChange: [] },
  { table: 'checkpoint', primary: 'id', keys: [], mayChange: [] },
  { table: 'known_sample', primary: 'id', keys: [['label']], mayChange: [] },
  { table: 'known_sample_withdrawal', primary: 'id', keys: [['sample_id']], mayChange: [] },
  { table: 'known_sample_trial', primary: 'id', keys: [], mayChange: [] },
  { table: 'known_sample_trial_withdrawal', primary: 'id', keys: [['trial_id']], mayChange: [] },
  { table: 'sealed_bundle', primary: 'id', keys: [], mayChange: [] },
  { table: 'sealed_bundle_piece', primary: 'id', keys: [['bundle_id', 'seq']], mayChange: [], once: 'EXISTS (SELECT 1 FROM sealed_bundle WHERE id = ROW.bundle_id)' },
  { table: 'lot_record', primary: 'id', keys: [['item_id', 'ordinal']], mayChange: [] },
  { table: 'weight_record', primary: 'id', keys: [], mayChange: [] },
  { table: 'house_text', primary: 'id', keys: [['kind', 'version']], mayChange: [] },
  { table: 'report_template', primary: 'id', keys: [['template_id', 'version']], mayChange: [] },
  { table: 'report_withdrawal', primary: 'id', keys: [['report_id']], mayChange: [] },
  { table: 'signing_authorisation', primary: 'id', keys: [['holder_id', 'ordinal']], mayChange: [] },
  { table: 'finding', primary: 'id', keys: [], mayChange: ['state', 'reason', 'decided_by', 'decided_at'], columns: FINDING_FACTS },
];

/** Tables that only grow. */
export const guardedTables = (): string[] => GUARDED.map((g) => g.table);

export type Trigger = { readonly name: string; readonly sql: string };

function triggersOf(g: Guarded): Trigger[] {
  const abort = `BEGIN SELECT RAISE(ABORT, '${g.table} only grows: its rows are evidence'); END`;
  const updateOf = g.mayChange.length > 0 ? `UPDATE OF ${(g.columns ?? []).join(', ')}` : 'UPDATE';
  const once = (row: 'OLD' | 'NEW'): string => g.once?.replace('ROW', row) ?? '';
  const same = [[g.primary], ['rowid'], ...g.keys]
    .map((key) => `(${key.map((column) => `${column} = NEW.${column}`).join(' AND ')})`).join(' OR ');
  return [
    { name: `${g.table}_no_update`, sql: `CREATE TRIGGER ${g.table}_no_update BEFORE ${updateOf} ON ${g.table} ${abort}` },
    { name: `${g.table}_no_delete`, sql: `CREATE TRIGGER ${g.table}_no_delete BEFORE DELETE ON ${g.table} ${g.once === undefined ? '' : `WHEN ${once('OLD')} `}${abort}` },
    // INSERT OR REPLACE deletes the old row without a DELETE trigger where recursive_triggers is off.
    { name: `${g.table}_no_reuse`, sql: `CREATE TRIGGER ${g.table}_no_reuse BEFORE INSERT ON ${g.table} WHEN EXISTS (SELECT 1 FROM ${g.table} WHERE ${same})${g.once === undefined ? '' : ` OR ${once('NEW')}`} ${abort}` },
  ];
}

/** Every guard there should be. */
export const expectedGuards = (): Trigger[] => GUARDED.flatMap(triggersOf);

/** Names of guards that are not among the triggers that are there, or differ from what they should be. */
export function guardsNotInPlace(present: readonly Trigger[]): string[] {
  const known = new Map(present.map((trigger) => [trigger.name, trigger.sql]));
  return expectedGuards().filter((trigger) => known.get(trigger.name) !== trigger.sql).map((trigger) => trigger.name);
}

/** Names of triggers that are not the program's: one may change what is written, in the middle of writing it. */
export function foreignTriggers(present: readonly Pick<Trigger, 'name'>[]): string[] {
  const guards = new Set(expectedGuards().map(({ name }) => name));
  return present.map(({ name }) => name).filter((name) => !guards.has(name));
}

const triggersIn = (sqlite: Database.Database): Trigger[] => sqlite.prepare(`SELECT name, sql FROM sqlite_master WHERE type = 'trigger'`).all() as Trigger[];

/** Names of guards that are missing or altered in an open file. A change of the guards themselves comes with a migration. */
export const missingGuards = (sqlite: Database.Database): string[] => guardsNotInPlace(triggersIn(sqlite));

/** Takes out every trigger that is not the program's, in one transaction, and returns their names. */
export function dropForeignTriggers(sqlite: Database.Database): string[] {
  const foreign = foreignTriggers(triggersIn(sqlite));
  if (foreign.length === 0) return [];
  sqlite.transaction(() => { for (const name of foreign) sqlite.exec(`DROP TRIGGER "${name.replaceAll('"', '""')}"`); }).immediate();
  return foreign;
}

/** Puts back every guard that is missing or altered, in one transaction, and returns their names. */
export function ensureGuards(sqlite: Database.Database): string[] {
  const missing = missingGuards(sqlite);
  if (missing.length === 0) return [];
  sqlite.transaction(() => {
    for (const trigger of expectedGuards()) {
      if (missing.includes(trigger.name)) sqlite.exec(`DROP TRIGGER IF EXISTS ${trigger.name}; ${trigger.sql}`);
    }
  }).immediate();
  return missing;
}
