import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { availableHosts } from './harness/hosts.ts';
import type { OpenCulet } from './harness/launch.ts';
import { beginCasebook, LABORATORY } from './steps/begin-casebook.ts';
import { callDoor } from './steps/call-door.ts';
import { usualCase } from './steps/hand-overs.ts';
import { keptData, workAs } from './steps/kept-data.ts';

/** What somebody with the file and another program would do: take the guard away and write another weight. */
function alterOneEntry(file: string): number {
  const sqlite = new Database(file);
  try {
    sqlite.exec('DROP TRIGGER custody_entry_no_update');
    const { seq } = sqlite.prepare<[], { seq: number }>(`SELECT seq FROM custody_entry WHERE json_extract(content, '$.event') = 'weighed' ORDER BY seq LIMIT 1`).get()!;
    sqlite.prepare(`UPDATE custody_entry SET content = json_set(content, '$.weight', 10999) WHERE seq = ?`).run(seq);
    return seq;
  } finally {
    sqlite.close();
  }
}

describe.each(availableHosts())('the ledgers in %s', (host) => {
  const data = keptData(host);
  let culet: OpenCulet;
  beforeAll(async () => {
    culet = await data.open();
    await beginCasebook(culet);
    await callDoor(culet, 'cases.takeIn', usualCase('Marrow Lane Jewellers'));
    await culet.page.getByRole('link', { name: 'Ledgers' }).click();
    await culet.page.getByRole('heading', { level: 1, name: 'Ledgers' }).waitFor();
  });
  afterAll(() => data.remove());
  const part = (name: string) => culet.page.locator('.verification-part').filter({ hasText: name });

  test('show every entry, newest first, and lead to its case', async () => {
    const rows = culet.page.getByRole('table', { name: 'Custody ledger' }).getByRole('row');
    await rows.nth(1).waitFor();
    const { total } = await callDoor(culet, 'custody.list', { caseId: null, itemId: null });
    expect(await rows.count()).toBe(total + 1);
    expect(await rows.nth(1).innerText()).toContain(String(total));
  });

  test('are unbroken, by the key V', async () => {
    await culet.page.keyboard.press('v');
    await culet.page.getByRole('heading', { name: 'Unbroken' }).waitFor();
    for (const name of ['custody ledger', 'audit ledger', 'guards', 'database']) expect(await part(name).innerText()).toContain('as recorded');
  });

  test('name the entry that was altered behind the program’s back', async () => {
    await data.close();
    const seq = alterOneEntry(join(data.dataDir, 'Casebook.culet'));
    culet = await data.open();
    await workAs(culet, LABORATORY.person);
    await culet.page.getByRole('link', { name: 'Ledgers' }).click();
    await culet.page.getByRole('heading', { level: 1, name: 'Ledgers' }).waitFor();
    await culet.page.keyboard.press('v');
    await culet.page.getByRole('heading', { name: 'Something does not fit' }).waitFor();
    // Whoever reads it must know what to do now.
    await culet.page.getByText('Keep this file as it is', { exact: false }).waitFor();
    expect(await part('custody ledger').innerText()).toMatch(new RegExp(`\\b${seq}\\b`));
    expect(await part('database').innerText()).toContain('as recorded');
  });

  test('tell in the house that a guard was missing and was put back', async () => {
    await culet.page.getByRole('link', { name: 'House' }).click();
    await culet.page.getByText(/the protections of its evidence were not as Culet had left them, and were put right \(custody_entry_no_update\)/).waitFor();
    await data.close();
    const sqlite = new Database(join(data.dataDir, 'Casebook.culet'));
    const refused = () => { sqlite.prepare('UPDATE custody_entry SET at = at').run(); };
    expect(refused).toThrow('custody_entry only grows');
    sqlite.close();
  });
});
