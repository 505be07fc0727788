import { describe, expect, test } from 'vitest';
import { ok } from '../../../../app/result.ts';
import { dispatch } from '../../../../main/host/dispatch.ts';
import { notFound } from '../../../../main/services/failures.ts';
import { fakeHouse, quietCall } from './fake-house.ts';

const client = { id: 'c1', name: 'Ines Halloran', address: '', email: '', phone: '', note: '', cases: 0 };
const manager = { casebookOpen: true, person: { name: 'Ode Marsh', roles: ['manager'] as const } };
const newClient = { id: null, name: 'Ines Halloran', address: '', email: '', phone: '', note: '' };

describe('dispatch', () => {
  test.each(['nothing.like.it', '', 'toString', '__proto__', 'constructor'])('refuses the unknown name %j', async (name) => {
    const reply = await dispatch(fakeHouse({}).house, name, {}, quietCall());
    expect(reply).toMatchObject({ ok: false, error: { code: 'not-found' } });
  });

  test('brings the service’s value, and tells every window of a change', async () => {
    const { house, announced } = fakeHouse({ 'clients.save': () => Promise.resolve(ok(client)) }, manager);
    expect(await dispatch(house, 'clients.save', newClient, quietCall())).toEqual({ ok: true, value: client });
    expect(announced).toEqual([{ kind: 'changed', operation: 'clients.save' }]);
  });

  test('says nothing of a change that was refused, nor of a call that only reads', async () => {
    const { house, announced } = fakeHouse({
      'clients.save': () => Promise.resolve(notFound('This client')),
      'clients.search': () => Promise.resolve(ok([client])),
    }, manager);
    expect(await dispatch(house, 'clients.save', newClient, quietCall())).toMatchObject({ ok: false, error: { code: 'not-found' } });
    expect(await dispatch(house, 'clients.search', { text: '' }, quietCall())).toMatchObject({ ok: true });
    expect(announced).toEqual([]);
  });

  test('asks for the role before it looks at the input', async () => {
    const { house } = fakeHouse({});
    const reply = await dispatch(house, 'reports.issue', { nonsense: true }, quietCall());
    expect(reply).toMatchObject({ ok: false, error: { code: 'not-allowed', message: 'Only an appraiser or a manager may do this; Mara Quill works here as examiner.' } });
  });

  test('gives each wrong field its sentence and never runs the service', async () => {
    let ran = false;
    const { house } = fakeHouse({ 'clients.save': () => { ran = true; return Promise.resolve(ok(client)); } }, manager);
    const reply = await dispatch(house, 'clients.save', { ...newClient, name: '  ', phone: 7 }, quietCall());
    expect(reply).toMatchObject({ ok: false, error: { code: 'invalid-input', message: '2 entries are not right yet.', fields: { name: 'Write the client’s name.', phone: 'This must be text.' } } });
    expect(ran).toBe(false);
  });

  test('hands the service what the contract made of the input: trimmed, defaults in place', async () => {
    let seen: unknown;
    const { house } = fakeHouse({ 'cases.list': (input) => { seen = input; return Promise.resolve(ok({ total: 0, rows: [] })); } });
    await dispatch(house, 'cases.list', {}, quietCall());
    expect(seen).toEqual({ text: '', state: 'all', sort: null, limit: 200, offset: 0 });
  });

  test('a fault becomes a sentence with a reference; the stack stays in the log', async () => {
    const { house, logged } = fakeHouse({ 'clients.search': () => { throw new Error('SELECT secret'); } });
    const reply = await dispatch(house, 'clients.search', { text: '' }, quietCall());
    expect(reply).toMatchObject({ ok: false, error: { code: 'internal' } });
    expect(JSON.stringify(reply)).not.toContain('SELECT');
    expect(JSON.stringify(reply)).toContain('5eed0001');
    expect(logged[0]).toMatchObject({ level: 'error', entry: { name: 'clients.search', reference: '5eed0001' } });
    expect(String(logged[0]!.entry['stack'])).toContain('SELECT secret');
  });

  test('an answer that does not keep the contract is a fault, not an answer', async () => {
    const { house } = fakeHouse({ 'clients.search': () => Promise.resolve(ok([{ id: 7 }] as never)) });
    expect(await dispatch(house, 'clients.search', { text: '' }, quietCall())).toMatchObject({ ok: false, error: { code: 'internal' } });
  });

  test('fields that the contract does not name stay inside', async () => {
    const { house } = fakeHouse({ 'clients.search': () => Promise.resolve(ok([{ ...client, passwordHash: 'x' } as never])) });
    expect(JSON.stringify(await dispatch(house, 'clients.search', { text: '' }, quietCall()))).not.toContain('passwordHash');
  });

  test('a call that was stopped says so', async () => {
    const stop = new AbortController();
    const { house, logged } = fakeHouse({ 'clients.search': () => { stop.abort(); return Promise.reject(new Error('stopped')); } });
    const reply = await dispatch(house, 'clients.search', { text: '' }, { ...quietCall(), signal: stop.signal });
    expect(reply).toMatchObject({ ok: false, error: { code: 'cancelled' } });
    expect(logged).toEqual([]);
  });

  test('a slow call is logged by its name, a quick one is not', async () => {
    const wait = (ms: number) => new Promise((resolve) => { setTimeout(resolve, ms); });
    const { house, logged } = fakeHouse({
      'clients.search': async () => { await wait(60); return ok([]); },
      'people.list': () => Promise.resolve(ok([])),
    });
    await dispatch(house, 'people.list', {}, quietCall());
    expect(logged).toEqual([]);
    await dispatch(house, 'clients.search', { text: '' }, quietCall());
    expect(logged).toMatchObject([{ message: 'slow call', entry: { name: 'clients.search' } }]);
  });
});
