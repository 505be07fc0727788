import { describe, expect, test } from 'vitest';
import { madeCasebook, type MadeCasebook } from '../made-casebook.ts';

const change = ({ deps, personId }: MadeCasebook, operation: string) => ({ at: deps.now().toISOString(), personId, operation });
const person = { name: 'Ben Invented', initials: 'BI', roles: ['examiner' as const], active: true };

describe('people', () => {
  test('the only manager stays one', async () => {
    const made = await madeCasebook();
    const amend = (roles: ('manager' | 'examiner')[], active: boolean) => made.casebook.people.save(change(made, 'people.save'), { id: made.personId, name: 'Ada Invented', initials: 'AI', roles, active });
    expect(await amend(['examiner'], true)).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(await amend(['manager'], false)).toMatchObject({ ok: false, error: { code: 'refused' } });
    await made.casebook.people.save(change(made, 'people.save'), { ...person, id: null, roles: ['manager'] });
    expect(await amend(['examiner'], true)).toMatchObject({ ok: true, value: { roles: ['examiner'] } });
    made.casebook.close();
  });
  test('initials tell people apart', async () => {
    const made = await madeCasebook();
    expect(await made.casebook.people.save(change(made, 'people.save'), { ...person, id: null, initials: 'ai' })).toMatchObject({ ok: false, error: { fields: { initials: expect.stringContaining('Ada') as string } } });
    made.casebook.close();
  });
  test('who left can’t work at a window; who works there stands in the audit ledger', async () => {
    const made = await madeCasebook();
    const ben = await made.casebook.people.save(change(made, 'people.save'), { ...person, id: null });
    if (!ben.ok) throw new Error('not saved');
    expect((await made.casebook.people.actAs(change(made, 'people.actAs'), ben.value.id)).ok).toBe(true);
    expect((await made.casebook.audit.list({ caseId: null, limit: 1, offset: 0 })).rows[0]).toMatchObject({ person: 'Ben Invented', operation: 'people.actAs' });
    await made.casebook.people.save(change(made, 'people.save'), { ...person, id: ben.value.id, active: false });
    expect(await made.casebook.people.actAs(change(made, 'people.actAs'), ben.value.id)).toMatchObject({ ok: false, error: { code: 'refused' } });
    made.casebook.close();
  });
});

test('a client’s change keeps before and after', async () => {
  const made = await madeCasebook();
  const input = { name: 'Gamma', address: '', email: '', phone: '', note: '' };
  const made1 = await made.casebook.clients.save(change(made, 'clients.save'), { ...input, id: null });
  if (!made1.ok) throw new Error('not saved');
  await made.casebook.clients.save(change(made, 'clients.save'), { ...input, id: made1.value.id, phone: '12' });
  const [audit] = (await made.casebook.audit.list({ caseId: null, limit: 1, offset: 0 })).rows;
  expect(JSON.parse(audit!.content)).toMatchObject({ before: { phone: '' }, after: { phone: '12' } });
  expect(await made.casebook.clients.save(change(made, 'clients.save'), { ...input, id: 'nobody' })).toMatchObject({ ok: false, error: { code: 'not-found' } });
  made.casebook.close();
});

test('drafts come and go', async () => {
  const { casebook } = await madeCasebook();
  await casebook.drafts.put('intake', { a: [1, 'ü'] }, '2026-03-02T09:00:00.000Z');
  await casebook.drafts.put('intake', { a: 2 }, '2026-03-02T09:00:01.000Z');
  expect(await casebook.drafts.get('intake')).toEqual({ key: 'intake', content: { a: 2 }, updatedAt: '2026-03-02T09:00:01.000Z' });
  await casebook.drafts.remove('intake');
  expect(await casebook.drafts.get('intake')).toBeNull();
  casebook.close();
});
