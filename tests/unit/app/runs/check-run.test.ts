import { describe, expect, test } from 'vitest';
import { checkRun, type RunPlace, type RunPlan } from '../../../../app/runs/check-run.ts';

const plan = (change: Partial<RunPlan> = {}): RunPlan => ({ method: 'raman', temperatureK: null, cautions: ['laser'], observation: null, fileCount: 1, ...change });
const place = (change: Partial<RunPlace> = {}): RunPlace => ({ stoneLabel: 'A-1', mounted: false, setting: null, returned: false, ...change });

describe('whether a run may be recorded', () => {
  test('a loose stone, a file, the caution acknowledged', () => {
    expect(checkRun(plan(), place(), null).ok).toBe(true);
  });

  test.each<[string, Partial<RunPlan>, Partial<RunPlace>, RegExp]>([
    ['a caution not acknowledged', { cautions: [] }, {}, /laser light was not acknowledged/],
    ['one of two cautions, for a cooled stone', { method: 'photoluminescence', temperatureK: 77, cautions: ['laser'] }, {}, /cold of the cryogen/],
    ['a magnet on a mounted stone', { method: 'magnet', observation: { method: 'magnet', response: 'none' }, fileCount: 0, cautions: [] }, { mounted: true, setting: 'open-back' }, /not possible on a mounted stone/],
    ['infrared through a closed back', { method: 'infrared', cautions: [] }, { mounted: true, setting: 'closed-back' }, /closed at the back/],
    ['infrared where the setting is not known', { method: 'infrared', cautions: [] }, { mounted: true, setting: null }, /closed at the back/],
    ['a stone that went back to the client', {}, { returned: true }, /returned to the client/],
  ])('refuses %s', (_name, planned, placed, sentence) => {
    const checked = checkRun(plan(planned), place(placed), null);
    expect(checked.ok).toBe(false);
    if (checked.ok) return;
    expect(checked.error.code).toBe('refused');
    expect(checked.error.message).toMatch(sentence);
    expect(checked.error.next).not.toBe('');
  });

  test('the cold needs no caution at room temperature', () => {
    expect(checkRun(plan({ method: 'photoluminescence', temperatureK: 295 }), place(), null).ok).toBe(true);
  });

  test('infrared through an open back', () => {
    expect(checkRun(plan({ method: 'infrared', cautions: [] }), place({ mounted: true, setting: 'open-back' }), null).ok).toBe(true);
  });

  test.each<[string, Partial<RunPlan>, string]>([
    ['an observation of another method', { method: 'magnet', cautions: [], observation: { method: 'thermal-probe', reading: 'diamond-like' } }, 'observation'],
    ['an observed method without observation', { method: 'microscopy', cautions: [] }, 'observation'],
    ['a method of curves without file', { fileCount: 0 }, 'files'],
  ])('names the field for %s', (_name, planned, field) => {
    const checked = checkRun(plan(planned), place(), null);
    expect(checked.ok ? null : [checked.error.code, checked.error.field]).toEqual(['invalid-input', field]);
  });

  test('ultraviolet transmission may be judged by eye, without file', () => {
    expect(checkRun(plan({ method: 'ultraviolet-transmission', cautions: ['ultraviolet'], fileCount: 0, observation: { method: 'ultraviolet-transmission', reading: 'opaque' } }), place(), null).ok).toBe(true);
  });

  test('an instrument that is not entered for the method, or out of use', () => {
    const other = checkRun(plan(), place(), { name: 'Bench infrared', methods: ['infrared'], active: true });
    expect(other.ok ? null : other.error.field).toBe('instrumentId');
    const idle = checkRun(plan(), place(), { name: 'Old laser', methods: ['raman'], active: false });
    expect(idle.ok ? null : idle.error.code).toBe('refused');
  });
});
