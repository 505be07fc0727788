import { expect, test } from 'vitest';
import { createNewId } from '../../../main/new-id.ts';

test('gives UUIDv7 of the time, rising within one millisecond and over clock changes', () => {
  const instants = [1_764_000_000_000, 1_764_000_000_000, 1_764_000_000_000, 1_764_000_000_001, 1_763_999_999_000];
  let at = 0;
  const newId = createNewId(() => instants[at++]!);
  const ids = instants.map(() => newId());
  for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect([...ids].sort()).toEqual(ids);
  expect(parseInt(ids[0]!.replaceAll('-', '').slice(0, 12), 16)).toBe(instants[0]);
});

test('never gives the same twice', () => {
  const newId = createNewId(() => 1_764_000_000_000);
  expect(new Set(Array.from({ length: 20_000 }, newId)).size).toBe(20_000);
});
