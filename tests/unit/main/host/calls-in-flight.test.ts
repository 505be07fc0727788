import { expect, test } from 'vitest';
import { ok } from '../../../../app/result.ts';
import { createCallsInFlight, type Caller } from '../../../../main/host/calls-in-flight.ts';
import { fakeHouse } from './fake-house.ts';

const client = { id: 'c1', name: 'Ines Halloran', address: '', email: '', phone: '', note: '', cases: 0 };
const manager = { casebookOpen: true, person: { name: 'Ode Marsh', roles: ['manager'] as const } };
const saveInput = { id: null, name: 'Ines Halloran', address: '', email: '', phone: '', note: '' };

function caller(): Caller & { leave(): void } {
  const gone = new AbortController();
  return { session: { personId: null }, emit() {}, gone: gone.signal, leave() { gone.abort(); } };
}

test('closing waits for a change and stops a reading', async () => {
  let finish: () => void = () => undefined;
  let saved = false;
  const { house } = fakeHouse({
    'clients.save': async (_input, call) => {
      await new Promise<void>((resolve) => { finish = resolve; });
      saved = !call.signal.aborted;
      return ok(client);
    },
    'clients.search': (_input, call) => new Promise((_resolve, reject) => { call.signal.addEventListener('abort', () => { reject(new Error('stopped')); }); }),
  }, manager);
  const calls = createCallsInFlight(house);
  const saving = calls.run('clients.save', saveInput, caller());
  const searching = calls.run('clients.search', { text: '' }, caller());
  await new Promise((resolve) => { setTimeout(resolve, 5); });
  const closing = calls.close();
  expect(await searching).toMatchObject({ ok: false, error: { code: 'cancelled' } });
  finish();
  await closing;
  expect(saved).toBe(true);
  expect(await saving).toMatchObject({ ok: true });
  expect(await calls.run('clients.search', { text: '' }, caller())).toMatchObject({ ok: false, error: { code: 'cancelled', message: 'Culet is closing.' } });
});

test('closing does not wait for ever', async () => {
  const { house } = fakeHouse({ 'clients.save': () => new Promise(() => undefined) }, manager);
  const calls = createCallsInFlight(house);
  void calls.run('clients.save', saveInput, caller());
  await new Promise((resolve) => { setTimeout(resolve, 5); });
  const started = performance.now();
  await calls.close(30);
  expect(performance.now() - started).toBeLessThan(1000);
});

test('a window that goes away stops what it was reading, not what it was saving', async () => {
  const aborted: Record<string, boolean> = {};
  const both = (name: string) => async (_input: unknown, call: { signal: AbortSignal }) => {
    await new Promise((resolve) => { setTimeout(resolve, 20); });
    aborted[name] = call.signal.aborted;
    return ok(name === 'save' ? client : []) as never;
  };
  const { house } = fakeHouse({ 'clients.save': both('save'), 'clients.search': both('search') }, manager);
  const calls = createCallsInFlight(house);
  const window = caller();
  const work = [calls.run('clients.save', saveInput, window), calls.run('clients.search', { text: '' }, window)];
  await new Promise((resolve) => { setTimeout(resolve, 5); });
  window.leave();
  await Promise.all(work);
  expect(aborted).toEqual({ save: false, search: true });
});
