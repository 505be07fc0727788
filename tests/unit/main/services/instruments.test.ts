import { afterEach, beforeEach, expect, test } from 'vitest';
import { openHouse, type House } from './work-house.ts';

let house: House;
beforeEach(async () => { house = await openHouse(); });
afterEach(() => house.close());

const laser = { id: null, name: 'Bench laser', methods: ['raman' as const], serial: '7', place: 'room 2', remembers: {}, checkEveryDays: 7, active: true };

test('an instrument is never checked, in order, lapsed, failed', async () => {
  const made = await house.done(house.examiner, 'instruments.save', laser);
  expect(made).toMatchObject({ name: 'Bench laser', state: 'never-checked', lastCheck: null });
  const check = { instrumentId: made.id, reference: 'a reference diamond', outcome: '1332.4', passed: true };
  expect(await house.done(house.examiner, 'instruments.recordCheck', check)).toMatchObject({ state: 'in-order', lastCheck: { by: 'Ada Invented', passed: true } });
  house.pass(8 * 24 * 60);
  expect((await house.done(house.examiner, 'instruments.list', {}))[0]?.state).toBe('lapsed');
  expect((await house.done(house.examiner, 'instruments.recordCheck', { ...check, passed: false })).state).toBe('failed');
});

test('two instruments can’t share a name, and an unknown one is not found', async () => {
  const made = await house.done(house.examiner, 'instruments.save', laser);
  const twin = await house.as(house.examiner, 'instruments.save', { ...laser, name: 'BENCH LASER' });
  expect(twin.ok ? null : Object.keys(twin.error.fields ?? {})).toEqual(['name']);
  expect(await house.done(house.examiner, 'instruments.save', { ...laser, id: made.id, active: false })).toMatchObject({ id: made.id, active: false });
  const unknown = await house.as(house.examiner, 'instruments.save', { ...laser, name: 'Other', id: 'nowhere' });
  expect(unknown.ok ? null : unknown.error.code).toBe('not-found');
});

test('a change needs a person, and is written to the audit ledger', async () => {
  const nobody = await house.as(null, 'instruments.save', laser);
  expect(nobody.ok ? null : nobody.error.code).toBe('refused');
  const made = await house.done(house.examiner, 'instruments.save', laser);
  const [entry] = (await house.casebook.audit.list({ caseId: null, limit: 1, offset: 0 })).rows;
  expect(entry).toMatchObject({ operation: 'instruments.save', subject: made.id, person: 'Ada Invented' });
});
