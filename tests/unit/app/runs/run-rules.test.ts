import { describe, expect, test } from 'vitest';
import { instrumentStateAt } from '../../../../app/runs/instrument-state.ts';
import { readsLine } from '../../../../app/runs/reads-line.ts';
import { runCounts } from '../../../../app/runs/run-counts.ts';
import { runWarnings, type RunInTime } from '../../../../app/runs/run-warnings.ts';

describe('the state of an instrument', () => {
  const at = '2026-11-25T10:00:00.000Z';
  test.each([
    [null, 'never-checked'],
    [{ at: '2026-11-24T10:00:00.000Z', passed: false }, 'failed'],
    [{ at: '2026-11-18T10:00:00.000Z', passed: true }, 'in-order'],
    [{ at: '2026-11-18T09:59:59.999Z', passed: true }, 'lapsed'],
  ] as const)('last check %j, every 7 days: %s', (check, state) => {
    expect(instrumentStateAt(check, 7, at)).toBe(state);
  });

  test('only a curve of an instrument in order counts; a look with a lens needs no instrument', () => {
    expect(runCounts('raman', 'in-order')).toBe(true);
    for (const state of ['lapsed', 'failed', 'never-checked', 'no-instrument'] as const) expect(runCounts('raman', state)).toBe(false);
    expect(runCounts('microscopy', 'no-instrument')).toBe(true);
    expect(runCounts('fluorescence-long-wave', 'failed')).toBe(false);
  });
});

describe('long-wave light belongs before short-wave', () => {
  const run = (number: string, method: RunInTime['method'], at: string, seconds?: number): RunInTime => ({
    number, method, at, observation: seconds === undefined ? null : { method: 'phosphorescence', colour: 'blue', strength: 'weak', seconds },
  });
  const longWave = run('R9', 'fluorescence-long-wave', '2026-11-25T10:00:00.000Z');
  const codes = (others: RunInTime[]): string[] => runWarnings(longWave, 'no-instrument', others).map((warning) => warning.code);

  test('a short-wave exposure minutes before is told, with its run and minutes', () => {
    const [warning] = runWarnings(longWave, 'no-instrument', [run('R8', 'fluorescence-short-wave', '2026-11-25T09:56:00.000Z'), longWave]);
    expect(warning?.code).toBe('short-wave-first');
    expect(warning?.message).toContain('4 min before (R8)');
  });
  test('one long before, or after, is not', () => {
    expect(codes([run('R8', 'fluorescence-short-wave', '2026-11-25T09:40:00.000Z')])).toEqual([]);
    expect(codes([run('R10', 'fluorescence-short-wave', '2026-11-25T10:02:00.000Z')])).toEqual([]);
  });
  test('a stone known to glow on for longer is given that time', () => {
    expect(codes([run('R8', 'phosphorescence', '2026-11-25T09:40:00.000Z', 1800)])).toEqual(['short-wave-first']);
    expect(codes([run('R8', 'phosphorescence', '2026-11-25T09:40:00.000Z', 60)])).toEqual([]);
  });
  test('the order the other way round is the right one', () => {
    expect(runWarnings(run('R9', 'fluorescence-short-wave', '2026-11-25T10:00:00.000Z'), 'no-instrument', [run('R8', 'fluorescence-long-wave', '2026-11-25T09:59:00.000Z')])).toEqual([]);
  });
});

describe('one line that tells what a run brought', () => {
  test.each([
    [{ observation: { method: 'fluorescence-long-wave', colour: 'blue', strength: 'very-weak' }, analyses: [], refusedFiles: 0, files: 0 }, 'very weak blue'],
    [{ observation: { method: 'microscopy', features: ['metallic-flux', 'feather'] }, analyses: [], refusedFiles: 0, files: 0 }, 'metallic flux, feather'],
    [{ observation: null, analyses: [], refusedFiles: 1, files: 1 }, 'not readable, file kept'],
    [{ observation: null, analyses: [null], refusedFiles: 1, files: 2 }, '1 curve not analysed; 1 of 2 files not readable'],
  ] as const)('%j', (content, line) => {
    expect(readsLine(content as unknown as Parameters<typeof readsLine>[0])).toBe(line);
  });
});
