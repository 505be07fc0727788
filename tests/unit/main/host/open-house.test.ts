import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { contract, type DoorEvent, type Input, type OperationName, type Output } from '../../../../app/contract/index.ts';
import type { Reply } from '../../../../app/contract/failure.ts';
import { dispatch } from '../../../../main/host/dispatch.ts';
import { silentLog } from '../../../../main/host/log.ts';
import { openHouse, type OpenHouse } from '../../../../main/host/open-house.ts';
import { migrationsFolder } from '../../../../main/casebook/migrations-folder.ts';
import { noSystemStore } from '../../../../main/keys/system-store.ts';
import type { Session } from '../../../../main/services/service.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';

let folder = '';
let opened: OpenHouse;
let announced: DoorEvent[] = [];
beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'culet-house-'));
  announced = [];
  opened = await open();
});
afterEach(async () => {
  await opened.close();
  rmSync(folder, { recursive: true, force: true });
});

function open(casebook?: string): Promise<OpenHouse> {
  return openHouse({
    dataFolder: folder, casebook, host: 'loopback', hostNote: 'for a test', migrations: migrationsFolder(import.meta.dirname),
    worker: createInlinePool(), log: silentLog, systemStore: noSystemStore('for a test'), announce: (event) => { announced.push(event); },
  });
}

function ask<K extends OperationName>(session: Session, name: K, input: Input<K>, house: OpenHouse = opened): Promise<Reply<Output<K>>> {
  return dispatch(house.house, name, input, { session, signal: new AbortController().signal, emit() {} }) as Promise<Reply<Output<K>>>;
}

async function value<T>(reply: Promise<Reply<T>>): Promise<T> {
  const given = await reply;
  if (!given.ok) throw new Error(JSON.stringify(given.error));
  return given.value;
}

const laboratory: Input<'casebook.create'> = {
  name: 'Invented Laboratory', address: '2 Nowhere Lane', zone: 'Europe/Berlin', logo: null, person: { name: 'Ada Invented', initials: 'AI', roles: ['examiner'], password: 'several invented words' },
};

test('every operation of the contract has its service', () => {
  expect(Object.keys(opened.house.services).sort()).toEqual(Object.keys(contract).sort());
});

test('before a casebook is open, only the door answers', async () => {
  const session = { personId: null };
  expect(await value(ask(session, 'casebook.status', {}))).toMatchObject({ state: 'none', host: 'loopback', hostNote: expect.stringContaining('for a test') as string, me: null });
  for (const name of Object.keys(contract) as OperationName[]) {
    if (contract[name].may === 'door') continue;
    expect(await ask(session, name, {} as never)).toMatchObject({ ok: false, error: { code: 'no-casebook' } });
  }
});

test('whoever starts the casebook works at that window, and nobody at another', async () => {
  const session: Session = { personId: null };
  await value(ask(session, 'casebook.create', laboratory));
  expect((await value(ask(session, 'casebook.status', {}))).me?.name).toBe('Ada Invented');
  expect(announced).toContainEqual({ kind: 'changed', operation: 'casebook.create' });
  expect(await ask({ personId: null }, 'people.list', {})).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
  expect(await ask({ personId: 'made-up' }, 'people.list', {})).toMatchObject({ ok: false, error: { code: 'not-allowed' } });
});

test('a second program on the same data is told who has the casebook, and nothing is lost by closing', async () => {
  const session: Session = { personId: null };
  await value(ask(session, 'casebook.create', laboratory));
  const second = await open();
  expect(second.inUse?.message).toContain('is open in another program');
  expect(second.inUse?.message).toMatch(new RegExp(`It is a Culet that serves a browser on this computer \\(process ${process.pid}\\), since \\d{4}-`));
  expect(await value(ask({ personId: null }, 'casebook.status', {}, second))).toMatchObject({ state: 'unusable' });
  await second.close();
  await opened.close();
  expect(existsSync(path.join(folder, 'Casebook.culet-wal'))).toBe(false);
  opened = await open();
  expect(opened.inUse).toBeNull();
  expect((await value(ask({ personId: null }, 'casebook.status', {}))).people).toMatchObject([{ name: 'Ada Invented' }]);
});

test('a casebook that is named is opened where it lies, and leaves the laboratory’s own alone', async () => {
  await value(ask({ personId: null }, 'casebook.create', laboratory));
  const named = path.join(folder, 'elsewhere.culet');
  const second = await open(named);
  const session: Session = { personId: null };
  await value(ask(session, 'casebook.create', { ...laboratory, name: 'Another Invented Laboratory' }, second));
  await second.close();
  const again = await open(named);
  expect((await value(ask({ personId: null }, 'casebook.status', {}, again)))).toMatchObject({ file: named, state: 'open', laboratory: { name: 'Another Invented Laboratory' } });
  await again.close();
  expect((await value(ask({ personId: null }, 'casebook.status', {})))).toMatchObject({ file: path.join(folder, 'Casebook.culet'), laboratory: { name: 'Invented Laboratory' } });
});
