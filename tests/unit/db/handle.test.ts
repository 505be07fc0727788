import { expect, test } from 'vitest';
import { err, ok } from '../../../app/result.ts';
import { madeCasebook } from './made-casebook.ts';

const drafts = (casebook: Awaited<ReturnType<typeof madeCasebook>>['casebook']) => casebook.handle.read.get<{ n: number }>('SELECT count(*) AS n FROM draft')!.n;
const INSERT = `INSERT INTO draft VALUES ('a', '1', 'at')`;

test('what throws undoes the whole transaction', async () => {
  const { casebook } = await madeCasebook();
  await expect(casebook.handle.transact((tx) => {
    tx.run(INSERT);
    throw new Error('stop');
  })).rejects.toThrow('stop');
  expect(drafts(casebook)).toBe(0);
  casebook.close();
});

test('a refusal undoes what was done before it, and comes back as a value', async () => {
  const { casebook } = await madeCasebook();
  expect(await casebook.handle.transactResult((tx) => {
    tx.run(INSERT);
    return err('no');
  })).toEqual(err('no'));
  expect(drafts(casebook)).toBe(0);
  expect(await casebook.handle.transactResult((tx) => ok(tx.run(INSERT).changes))).toEqual(ok(1));
  expect(drafts(casebook)).toBe(1);
  casebook.close();
});

test('asynchronous work is refused and undone', async () => {
  const { casebook } = await madeCasebook();
  await expect(casebook.handle.transact(async (tx) => { tx.run(INSERT); })).rejects.toThrow(TypeError);
  expect(drafts(casebook)).toBe(0);
  casebook.close();
});

test('records without an entry in the audit ledger after them are undone: a fault of the program', async () => {
  const { casebook } = await madeCasebook();
  await expect(casebook.handle.transact((tx) => tx.run(`UPDATE person SET name = 'Other'`))).rejects.toThrow('no entry of the audit ledger vouches for what was written into person');
  expect(casebook.handle.read.get<{ name: string }>('SELECT name FROM person')!.name).toBe('Ada Invented');
  casebook.close();
});
