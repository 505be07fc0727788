import { describe, expect, test } from 'vitest';
import { createSeededIds } from '../../../../main/demonstration/seeded-ids.ts';

describe('seeded ids', () => {
  test('rise with the scripted clock, are version 7, and follow the seed', () => {
    let ms = Date.parse('2026-11-25T09:00:00.000Z');
    const make = (seed: number): string[] => {
      const next = createSeededIds(seed, () => new Date(ms));
      ms = Date.parse('2026-11-25T09:00:00.000Z');
      return Array.from({ length: 300 }, (_, i) => { if (i % 50 === 0) ms += 1; return next(); });
    };
    const ids = make(1);
    expect([...ids].sort()).toEqual(ids);
    expect(new Set(ids).size).toBe(300);
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(make(1)).toEqual(ids);
    expect(make(2)).not.toEqual(ids);
  });
});
