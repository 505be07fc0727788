import BetterSqlite from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import type { Verification } from '../../../app/contract/casebook.ts';
import { canonicalJson, type JsonValue } from '../../../app/custody/canonical-json.ts';
import { entryHash, GENESIS } from '../../../app/custody/chain.ts';
import { openCasebook } from '../../../db/open-casebook.ts';
import { intake, madeCasebook } from '../../unit/db/made-casebook.ts';

type Tool = BetterSqlite.Database;

/** A casebook with ten custody entries, altered from outside by someone who takes the guards away first. */
async function verifiedAfter(tamper: (tool: Tool) => void): Promise<Verification> {
  const { casebook, file, options, deps, personId } = await madeCasebook();
  const change = (operation: string) => ({ at: deps.now().toISOString(), personId, operation });
  for (let i = 0; i < 4; i++) await casebook.cases.takeIn(change('cases.takeIn'), intake());
  const itemId = casebook.handle.read.get<{ id: string }>('SELECT id FROM item')!.id;
  for (const place of ['bench 1', 'safe 1']) await casebook.custody.append(change('custody.append'), { itemId, event: 'moved', place });
  casebook.close();
  const tool = new BetterSqlite(file);
  for (const { name } of tool.prepare(`SELECT name FROM sqlite_master WHERE type = 'trigger'`).all() as { name: string }[]) tool.exec(`DROP TRIGGER ${name}`);
  tamper(tool);
  tool.close();
  const opened = openCasebook(options);
  if (!opened.ok) throw new Error(opened.error.message);
  const verified = await opened.value.ledgers.verify({ at: deps.now().toISOString() });
  opened.value.close();
  return verified!;
}

const fault = (verified: Verification, part: string): string | null => verified.parts.find((p) => p.part === part)!.fault;

type Row = { seq: number; at: string; person_id: string; case_id: string; item_id: string; content: string };

/** Writes the whole custody ledger anew, so that it holds in itself. */
function rechain(tool: Tool): void {
  let previous = GENESIS;
  for (const row of tool.prepare('SELECT * FROM custody_entry ORDER BY seq').all() as Row[]) {
    const content = JSON.parse(row.content) as JsonValue;
    const hash = entryHash(previous, { seq: row.seq, at: row.at, person: row.person_id, case: row.case_id, item: row.item_id, content });
    tool.prepare('UPDATE custody_entry SET content = ?, previous = ?, hash = ? WHERE seq = ?').run(canonicalJson(content), previous, hash, row.seq);
    previous = hash;
  }
}

describe('verify names what was altered behind the guards', () => {
  test('a changed custody entry', async () => {
    const verified = await verifiedAfter((tool) => tool.exec(`UPDATE custody_entry SET content = replace(content, 'safe 2', 'safe 9') WHERE seq = 3`));
    expect(verified.sound).toBe(false);
    expect(fault(verified, 'custody ledger')).toBe('Entry 3 was changed after it was written: its content no longer gives its digest.');
    expect(fault(verified, 'audit ledger')).toBeNull();
    expect(fault(verified, 'guards')).toContain('put back');
  });
  test('a changed audit entry, its person', async () => {
    expect(fault(await verifiedAfter((tool) => tool.exec(`UPDATE audit_entry SET person_id = NULL WHERE seq = 4`)), 'audit ledger')).toContain('Entry 4 was changed');
  });
  test('an entry taken out', async () => {
    expect(fault(await verifiedAfter((tool) => tool.exec('DELETE FROM custody_entry WHERE seq = 5')), 'custody ledger')).toContain('Entry 5 is missing');
  });
  test('the end cut off', async () => {
    expect(fault(await verifiedAfter((tool) => tool.exec('DELETE FROM audit_entry WHERE seq > 6')), 'audit ledger')).toContain('removed from the end');
  });
  test('the end cut off and SQLite’s own count set back: the audit ledger knows', async () => {
    const verified = await verifiedAfter((tool) => tool.exec(`DELETE FROM custody_entry WHERE seq > 9; UPDATE sqlite_sequence SET seq = 9 WHERE name = 'custody_entry'`));
    expect(fault(verified, 'custody ledger')).toBe('Entry 10 is named in the audit ledger and is no longer there.');
  });
  test('the custody ledger written anew from end to end: the audit ledger knows', async () => {
    const verified = await verifiedAfter((tool) => {
      tool.exec(`UPDATE custody_entry SET content = replace(content, 'bench 1', 'bench 7') WHERE seq = 9`);
      rechain(tool);
    });
    expect(fault(verified, 'custody ledger')).toBe('Entry 9 is not the one that the audit ledger names: the ledger was written anew.');
  });
  test('a report put in from outside', async () => {
    const verified = await verifiedAfter((tool) => tool.exec(`INSERT INTO report VALUES ('r', (SELECT id FROM case_record), 'S-2026-0001', 1, '{}',
      '44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a', x'', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', 'at', (SELECT id FROM person), NULL, NULL, NULL, NULL)`));
    expect(fault(verified, 'issued reports')).toContain('put in from outside');
  });
  test('a reference that leads nowhere', async () => {
    const verified = await verifiedAfter((tool) => {
      tool.pragma('foreign_keys = OFF');
      tool.exec(`DELETE FROM client WHERE rowid = 1`);
    });
    expect(fault(verified, 'database')).toContain('client');
  });
  test('nothing at all but the guards', async () => {
    const verified = await verifiedAfter(() => {});
    expect(verified.parts.filter((part) => !part.sound).map((part) => part.part)).toEqual(['guards']);
  });
});
