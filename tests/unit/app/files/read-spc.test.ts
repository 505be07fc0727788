import { describe, expect, test } from 'vitest';
import { readSpectrumFile } from '../../../../app/files/read-spectrum-file.ts';
import { looksLikeSpc } from '../../../../app/files/spc-header.ts';
import type { SpectrumFile } from '../../../../app/files/spectrum-file.ts';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { madeOldSpc, madeSpc } from './made-spc.ts';

const Y = Array.from({ length: 50 }, (_, i) => 100 + 50 * Math.sin(i / 5));
const read = (bytes: Uint8Array, name = 'run.spc'): SpectrumFile => {
  const outcome = readSpectrumFile(name, bytes);
  if (!outcome.ok) throw new Error(outcome.error.message);
  return outcome.value;
};
const refusal = (bytes: Uint8Array) => {
  const outcome = readSpectrumFile('run.spc', bytes);
  if (outcome.ok) throw new Error('was read');
  return outcome.error;
};
const near = (found: ArrayLike<number>, expected: readonly number[], within: number) => {
  expect(found).toHaveLength(expected.length);
  expected.forEach((value, i) => { expect(Math.abs(found[i]! - value)).toBeLessThanOrEqual(within); });
};

describe('SPC files', () => {
  test('one curve, evenly spaced, floating point', () => {
    const file = read(madeSpc({ curves: [{ y: Y }], firstX: 500, lastX: 549, memo: 'Invented stone 7' }));
    expect(file).toMatchObject({ format: 'spc', warnings: [] });
    expect(file.blocks).toHaveLength(1);
    expect(file.blocks[0]).toMatchObject({ title: 'Invented stone 7', xUnit: 'nm', yUnit: 'counts' });
    expect(file.blocks[0]!.x[0]).toBe(500);
    expect(file.blocks[0]!.x[49]).toBe(549);
    near(file.blocks[0]!.y, Y.map(Math.fround), 0);
    expect(file.blocks[0]!.header).toContainEqual(['date', '2026-03-14 09:26']);
  });
  test.each([[false, 9, 2 ** -24], [true, 9, 2 ** -8]])('whole numbers, 16 bits %s', (short, exponent, within) => {
    near(read(madeSpc({ curves: [{ y: Y }], firstX: 1, lastX: 2, exponent, short })).blocks[0]!.y, Y, within);
  });
  test('big-endian', () => {
    const file = read(madeSpc({ curves: [{ y: Y }], firstX: 4000, lastX: 400, xType: 1, yType: 2, bigEndian: true }));
    expect(file.blocks[0]).toMatchObject({ xUnit: 'cm-1', yUnit: 'absorbance' });
    expect(file.blocks[0]!.x[0]).toBe(4000);
    near(file.blocks[0]!.y, Y.map(Math.fround), 0);
  });
  test('listed abscissae, in the file’s order', () => {
    const listed = Y.map((_, i) => 900 - i * i * 0.1);
    near(read(madeSpc({ curves: [{ y: Y }], listed })).blocks[0]!.x, listed.map(Math.fround), 0);
  });
  test('several curves with one axis, numbered and placed', () => {
    const file = read(madeSpc({ curves: [{ y: Y, z: 1.5 }, { y: Y.map((v) => 2 * v), z: 3 }], firstX: 1, lastX: 50, xType: 13 }), 'map.spc');
    expect(file.blocks.map((b) => b.title)).toEqual(['map · 1 (z 1.5)', 'map · 2 (z 3)']);
    expect(file.blocks[1]!.xUnit).toBe('raman-shift');
    near(file.blocks[1]!.y, Y.map((v) => Math.fround(2 * v)), 0);
  });
  test('each curve of several has the exponent of its own, and the file’s where that is empty', () => {
    const file = read(madeSpc({ curves: [{ y: Y }, { y: Y.map((v) => 8 * v) }], firstX: 1, lastX: 50, exponent: 9, subExponents: [9, 12] }));
    near(file.blocks[1]!.y, Y.map((v) => 8 * v), 2 ** -20);
    const empty = madeSpc({ curves: [{ y: Y }, { y: Y }], firstX: 1, lastX: 50, exponent: 9 });
    empty[512 + 1] = 0;
    near(read(empty).blocks[0]!.y, Y, 2 ** -23);
  });
  test.each([false, true])('curves with abscissae of their own and lengths of their own, directory %s', (directory) => {
    const xs = [Y.map((_, i) => i), Y.slice(0, 20).map((_, i) => 100 + 2 * i)];
    const file = read(madeSpc({ curves: [{ x: xs[0]!, y: Y }, { x: xs[1]!, y: Y.slice(0, 20) }], directory }));
    expect(file.blocks.map((b) => b.x.length)).toEqual([50, 20]);
    near(file.blocks[1]!.x, xs[1]!, 0);
  });
  test('the log’s entries are kept', () => {
    const file = read(madeSpc({ curves: [{ y: Y }], firstX: 1, lastX: 2, log: 'SCANS = 16\r\nLASER=532.1\r\n' }));
    expect(file.blocks[0]!.header).toContainEqual(['SCANS', '16']);
    expect(file.blocks[0]!.header).toContainEqual(['LASER', '532.1']);
    expect(file.warnings).toEqual([]);
  });
  test('labels of its own are read where the code says nothing; wavenumbers of a Raman experiment are shifts', () => {
    expect(read(madeSpc({ curves: [{ y: Y }], firstX: 1, lastX: 2, xType: 0, yType: 0, labels: ['Wavelength (nm)', 'Counts'] })).blocks[0]).toMatchObject({ xUnit: 'nm', yUnit: 'counts' });
    expect(read(madeSpc({ curves: [{ y: Y }], firstX: 1, lastX: 2, xType: 1, experiment: 11 })).blocks[0]!.xUnit).toBe('raman-shift');
    expect(read(madeSpc({ curves: [{ y: Y }], firstX: 1, lastX: 2, xType: 0 })).warnings.map((w) => w.code)).toContain('unit-not-stated');
  });
  test('the old form: exchanged halves, 16 bits, several curves', () => {
    const one = read(madeOldSpc({ curves: [{ y: Y }], firstX: 4000, lastX: 400, exponent: 9, memo: 'Invented film' }));
    expect(one.blocks[0]).toMatchObject({ title: 'Invented film', xUnit: 'cm-1', yUnit: 'absorbance' });
    near(one.blocks[0]!.y, Y, 2 ** -23);
    near(read(madeOldSpc({ curves: [{ y: Y }], exponent: 9, short: true })).blocks[0]!.y, Y, 2 ** -8);
    const negative = Y.map((v) => v - 120);
    const two = read(madeOldSpc({ curves: [{ y: Y }, { y: negative }], exponent: 9 }));
    expect(two.blocks).toHaveLength(2);
    near(two.blocks[1]!.y, negative, 2 ** -23);
  });
  test('cut off, it is refused in words; bytes too many are told', () => {
    const whole = madeSpc({ curves: [{ y: Y }, { y: Y }], firstX: 1, lastX: 2 });
    for (const length of [whole.length - 1, whole.length - 150, 600, 530]) expect(refusal(whole.slice(0, length))).toMatchObject({ code: 'cut-off', message: expect.stringContaining('cut off') as string });
    expect(read(Uint8Array.of(...whole, 1, 2, 3)).warnings.map((w) => w.code)).toEqual(['bytes-after-data']);
  });
  test('impossible headers are refused in words', () => {
    expect(refusal(madeSpc({ curves: [{ y: Y }], firstX: 5, lastX: 5 })).code).toBe('axis-constant');
    expect(refusal(madeSpc({ curves: [{ y: Y }], listed: Y.map((_, i) => (i < 20 ? i : 40 - i)) })).code).toBe('axis-turns');
    const claims = madeSpc({ curves: [{ y: Y }], firstX: 1, lastX: 2 });
    new DataView(claims.buffer).setUint32(4, 200_000_000, true);
    expect(refusal(claims).code).toBe('too-many-points');
    const many = madeSpc({ curves: [{ y: Y }], firstX: 1, lastX: 2 });
    new DataView(many.buffer).setUint32(24, 5000, true);
    expect(refusal(many).code).toBe('too-many-curves');
    const nothing = madeSpc({ curves: [{ y: Y.map(() => Number.NaN) }], firstX: 1, lastX: 2 });
    expect(refusal(nothing).code).toBe('spc-damaged');
  });
  test('other files that begin alike are not taken for one', () => {
    const text = (s: string) => new TextEncoder().encode(s);
    expect(looksLikeSpc(text(`OK ${'400 1\n'.repeat(100)}`))).toBe(false);
    expect(looksLikeSpc(Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 0, 0, 8, 0, ...new Array<number>(600).fill(0)]))).toBe(false);
    expect(looksLikeSpc(Uint8Array.from([0x4d, 0x4d, 0, 0x2a, 0, 0, 0, 8, ...new Array<number>(600).fill(0)]))).toBe(false);
    const wide = new Uint8Array(1200);
    [...'K 400 1 '.repeat(70)].forEach((c, i) => { wide[2 * i + 1] = c.charCodeAt(0); });
    expect(looksLikeSpc(wide)).toBe(false);
  });
  test('never throws, whatever the bytes', () => {
    const r = seededRandom(11);
    const files = [madeSpc({ curves: [{ y: Y }, { y: Y }], firstX: 1, lastX: 2, log: 'A=1' }), madeSpc({ curves: [{ x: Y.map((_, i) => i), y: Y }], directory: true }), madeOldSpc({ curves: [{ y: Y }], exponent: 9 })];
    let readable = 0;
    for (let k = 0; k < 1500; k++) {
      const bytes = Uint8Array.from(files[k % files.length]!);
      for (let n = 0; n < 1 + r.below(6); n++) bytes[r.below(r.uniform() < 0.7 ? 600 : bytes.length)] = r.below(256);
      const outcome = readSpectrumFile('fuzz.spc', bytes.slice(0, r.uniform() < 0.3 ? r.below(bytes.length) : bytes.length));
      if (outcome.ok) { readable++; for (const block of outcome.value.blocks) expect(block.x.length).toBe(block.y.length); } else expect(outcome.error.message.length).toBeGreaterThan(20);
    }
    expect(readable).toBeGreaterThan(100);
  });
});
