import BetterSqlite from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import type { Verification } from '../../../app/contract/casebook.ts';
import { openCasebook, type Casebook } from '../../../db/open-casebook.ts';
import { teachFold } from '../../../db/open-reader.ts';
import { intake, madeCasebook } from '../../unit/db/made-casebook.ts';

/** A casebook whose definitions somebody changed with another program, opened again; looked at only where `readOnly`. */
async function openedAfter(tamper: (tool: BetterSqlite.Database) => void, readOnly = false): Promise<{ casebook: Casebook; verified: Verification; add: () => Promise<string> }> {
  const { casebook, file, options, deps, personId } = await madeCasebook();
  casebook.close();
  const tool = new BetterSqlite(file);
  teachFold(tool);
  tamper(tool);
  tool.close();
  const opened = openCasebook({ ...options, readOnly });
  if (!opened.ok) throw new Error(opened.error.message);
  const verified = (await opened.value.ledgers.verify({ at: deps.now().toISOString() }))!;
  const add = async (): Promise<string> => {
    const taken = await opened.value.cases.takeIn({ at: deps.now().toISOString(), personId, operation: 'cases.takeIn' }, intake());
    if (!taken.ok) throw new Error(taken.error.message);
    return opened.value.handle.read.get<{ asks: string }>('SELECT asks FROM case_record WHERE id = ?', [taken.value.caseId])!.asks;
  };
  return { casebook: opened.value, verified, add };
}

const fault = (verified: Verification, part: string): string | null => verified.parts.find((p) => p.part === part)!.fault;
const LIAR = `CREATE TRIGGER helpful AFTER INSERT ON case_record BEGIN UPDATE case_record SET asks = 'what I like' WHERE id = NEW.id; END`;

/** Changes the words of a definition where they stand, as no statement of SQL would. */
function reword(tool: BetterSqlite.Database, name: string, from: string, to: string): void {
  tool.unsafeMode(true);
  tool.pragma('writable_schema = ON');
  const { changes } = tool.prepare('UPDATE sqlite_master SET sql = replace(sql, ?, ?) WHERE name = ? AND instr(sql, ?) > 0').run(from, to, name, from);
  tool.pragma('writable_schema = OFF');
  if (changes !== 1) throw new Error(`the definition of ${name} does not hold ${from}`);
}

describe('a trigger that is not the program’s', () => {
  test('would change what is written: it is taken out before anything is, and verify names it', async () => {
    const { casebook, verified, add } = await openedAfter((tool) => tool.exec(LIAR));
    expect(casebook.guardsRestored).toEqual(['helpful']);
    expect(fault(verified, 'guards')).toContain('The trigger helpful, which is not Culet’s, stood in the file and was taken out');
    expect(await add()).not.toBe('what I like');
    casebook.close();
  });

  test('is named where the file is only looked at, and stays', async () => {
    const { casebook, verified } = await openedAfter((tool) => tool.exec(LIAR), true);
    expect(fault(verified, 'guards')).toContain('The trigger helpful is not Culet’s: it may change what is written.');
    casebook.close();
  });

  test('that would swallow entries of a ledger is taken out, whatever it is called', async () => {
    const { casebook, verified, add } = await openedAfter((tool) => tool.exec(`CREATE TRIGGER "odd ""name" BEFORE INSERT ON custody_entry BEGIN SELECT RAISE(IGNORE); END`));
    expect(fault(verified, 'guards')).toContain('odd "name');
    const before = casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM custody_entry')!.n;
    await add();
    expect(casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM custody_entry')!.n).toBeGreaterThan(before);
    casebook.close();
  });
});

describe('definitions that differ from the program’s are named by verify', () => {
  test.each<[string, (tool: BetterSqlite.Database) => void, string]>([
    ['an index that keeps numbers from being given out twice', (tool) => tool.exec('DROP INDEX report_number_revision'), 'The index report_number_revision is no longer there.'],
    ['a rule of a table', (tool) => { reword(tool, 'stone', 'NOT NULL', ''); }, 'The table stone is not defined as Culet defines it.'],
    ['a column of somebody', (tool) => tool.exec('ALTER TABLE stone ADD COLUMN twist TEXT'), 'The table stone is not defined as Culet defines it.'],
    ['a view', (tool) => tool.exec('CREATE VIEW extra AS SELECT 1 AS one'), 'The view extra is not Culet’s.'],
    ['a table', (tool) => tool.exec('CREATE TABLE extra (a)'), 'The table extra is not Culet’s.'],
  ])('%s', async (_, tamper, sentence) => {
    const { casebook, verified } = await openedAfter(tamper);
    expect(fault(verified, 'database')).toContain(sentence);
    casebook.close();
  });

  test('and nobody else is accused: one that was only used fits', async () => {
    const { casebook, verified, add } = await openedAfter((tool) => { tool.exec('ANALYZE'); tool.exec('VACUUM'); });
    await add();
    expect(verified.parts.filter((part) => !part.sound)).toEqual([]);
    casebook.close();
  });
});
