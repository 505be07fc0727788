import { describe, expect, test } from 'vitest';
import { guessMethod } from '../../../../renderer/runs/guess-method.ts';
import { gatherFiles, sizeWords } from '../../../../renderer/runs/incoming-file.ts';
import { adviseMethods, orderHint } from '../../../../renderer/runs/method-advice.ts';
import { instrumentsFor, NO_SETTINGS, readSettings, rememberedSettings, settingsOf } from '../../../../renderer/runs/run-settings.ts';
import { asksUnit, blockWords, unitIsOpen } from '../../../../renderer/runs/trial-words.ts';
import { stateUnit } from '../../../../renderer/runs/state-unit.ts';
import { tallyFiles } from '../../../../renderer/runs/tally-files.ts';
import type { FileTrial, InstrumentView } from '../../../../app/contract/work.ts';

const BLOCK: FileTrial['blocks'][number] = { title: '', xUnit: 'nm', yUnit: 'counts', xUnitText: '', points: 4000, firstX: 410, lastX: 850.25, minY: 0, maxY: 1 };
const trial = (change: Partial<typeof BLOCK>): FileTrial => ({ name: 'a', sha256: '0'.repeat(64), size: 1, alreadyIn: null, format: 'jcamp-dx', blocks: [{ ...BLOCK, ...change }], warnings: [], error: null });

describe('settings', () => {
  test('only those of the method are read, with a decimal comma too', () => {
    expect(settingsOf('infrared')).not.toContain('laserNm');
    expect(readSettings({ ...NO_SETTINGS, laserNm: '532,08', resolution: '0.5' }, 'photoluminescence').numbers).toEqual({ laserNm: 532.08, temperatureK: null, integrationMs: null, resolution: 0.5 });
    expect(readSettings({ ...NO_SETTINGS, laserNm: '532' }, 'infrared').numbers.laserNm).toBeNull();
    expect(settingsOf('magnet')).toEqual([]);
  });
  test('what can’t be gets its sentence', () => {
    const { faults } = readSettings({ ...NO_SETTINGS, laserNm: 'green', temperatureK: '3' }, 'raman');
    expect(Object.keys(faults)).toEqual(['laserNm', 'temperatureK']);
  });
  test('a resolution that may be nm or cm⁻¹ is not filled in', () => {
    const remembers = { laserNm: 532, resolution: 0.5 };
    expect(rememberedSettings({ remembers, methods: ['photoluminescence'] }).resolution).toBe('0.5');
    expect(rememberedSettings({ remembers, methods: ['photoluminescence', 'raman'] })).toMatchObject({ laserNm: '532', resolution: '' });
  });
  test('instruments in order come first, those out of use not at all', () => {
    const one = (name: string, change: Partial<InstrumentView>): InstrumentView => ({ id: name, name, methods: ['raman'], serial: '', place: '', remembers: {}, checkEveryDays: 30, active: true, state: 'in-order', lastCheck: null, ...change });
    const list = [one('b', { state: 'lapsed' }), one('c', {}), one('d', { active: false }), one('e', { methods: ['infrared'] })];
    expect(instrumentsFor('raman', list).map((i) => i.name)).toEqual(['c', 'b']);
  });
});

describe('advice', () => {
  test('says why a test is impossible on a mounted stone', () => {
    const on = (setting: 'open-back' | 'closed-back' | null) => adviseMethods({ mounted: true, setting }, []);
    const why = (list: ReturnType<typeof on>, method: string) => list.find((a) => a.method === method)?.impossible ?? null;
    expect(why(on('closed-back'), 'infrared')).toMatch(/closed/);
    expect(why(on('open-back'), 'infrared')).toBeNull();
    expect(why(on(null), 'infrared')).toMatch(/not stated/);
    expect(why(on('open-back'), 'magnet')).toMatch(/metal/);
  });
  test('lists the runs that were done', () => {
    const advice = adviseMethods({ mounted: false, setting: null }, [{ method: 'raman', number: 'R1' }, { method: 'raman', number: 'R4' }]);
    expect(advice.find((a) => a.method === 'raman')?.done).toEqual(['R1', 'R4']);
  });
  test('asks for long-wave first, once', () => {
    expect(orderHint('fluorescence-short-wave', [])).toMatch(/Long-wave/);
    expect(orderHint('fluorescence-short-wave', [{ method: 'fluorescence-long-wave', number: 'R1' }])).toBeNull();
    expect(orderHint('fluorescence-long-wave', [{ method: 'phosphorescence', number: 'R1' }])).toMatch(/dark/);
  });
});

describe('files on trial', () => {
  test('are told in words', () => {
    expect(blockWords(BLOCK)).toBe('4\u00a0000 points, 410 to 850.25 nm');
    expect(blockWords({ ...BLOCK, xUnit: 'unstated' })).toMatch(/unit not said/);
    expect(sizeWords(999)).toBe('999 bytes');
    expect(sizeWords(100_900)).toBe('100.9 kB');
  });
  test('ask for the unit only where the file does not say it, and go on showing the answer', () => {
    expect(asksUnit(trial({}), false)).toBe(false);
    expect(unitIsOpen(trial({ xUnit: 'unstated' }))).toBe(true);
    expect(asksUnit(trial({ xUnit: 'angstrom' }), true)).toBe(true);
    expect(unitIsOpen(trial({ xUnit: 'angstrom' }))).toBe(false);
  });
  test('tell their method by their units', () => {
    expect(guessMethod(trial({}))).toBe('photoluminescence');
    expect(guessMethod(trial({ yUnit: 'absorbance' }))).toBe('absorption');
    expect(guessMethod(trial({ xUnit: 'raman-shift' }))).toBe('raman');
    expect(guessMethod(trial({ xUnit: 'cm-1', firstX: 4000, lastX: 650 }))).toBe('infrared');
    expect(guessMethod(trial({ xUnit: 'cm-1', firstX: 24_000, lastX: 12_000 }))).toBeNull();
    expect(guessMethod(trial({ xUnit: 'unstated' }))).toBeNull();
    expect(guessMethod(undefined)).toBeNull();
  });
  test('are counted by what became of them', () => {
    const bad: FileTrial = { ...trial({}), error: { code: 'unreadable', message: 'no numbers' } };
    const files = ['a', 'b', 'c', 'd'].map((key) => ({ key }));
    expect(tallyFiles([], new Map(), 0)).toBe('');
    expect(tallyFiles(files, new Map(), 0)).toBe('4 files: 4 being read');
    expect(tallyFiles(files.slice(0, 1), new Map([['a', trial({})]]), 0)).toBe('1 file: 1 read');
    expect(tallyFiles(files, new Map([['a', trial({})], ['b', bad], ['c', trial({ xUnit: 'unstated' })], ['d', trial({})]]), 1)).toBe('5 files: 2 read, 1 asks for its unit, 1 refused, 1 not taken, see above');
  });
  test('a unit said for one goes for those that came with it and say none, and a file’s own word stays', () => {
    const open = trial({ xUnit: 'unstated' });
    const trials = new Map([['a', open], ['b', open], ['c', trial({})], ['d', open]]);
    const files = [['a', 1], ['b', 1], ['c', 1], ['d', 2]].map(([key, drop]) => ({ key: String(key), name: `${key}.txt`, bytes: new Uint8Array(), drop: Number(drop) }));
    const units = (list: readonly { readonly xUnit?: string }[]) => list.map((file) => file.xUnit);
    const first = stateUnit(files, 'a', 'angstrom', trials);
    expect(units(first)).toEqual(['angstrom', 'angstrom', undefined, undefined]);
    const corrected = stateUnit(first, 'a', 'nm', trials);
    expect(units(corrected)).toEqual(['nm', 'nm', undefined, undefined]);
    const own = stateUnit(corrected, 'b', 'ev', trials);
    expect(units(stateUnit(own, 'a', 'cm-1', trials))).toEqual(['cm-1', 'ev', undefined, undefined]);
  });
  test('too large a file is named and left out, the others are taken', async () => {
    const large = { name: 'film.bin', size: 65 * 1024 * 1024 } as File;
    const gathered = await gatherFiles([large, new File(['1 2'], 'a.txt')]);
    expect(gathered.files.map((file) => [file.name, file.bytes.byteLength])).toEqual([['a.txt', 3]]);
    expect(gathered.refused).toEqual(['“film.bin” is larger than 64 MB and was not taken.']);
  });
});
