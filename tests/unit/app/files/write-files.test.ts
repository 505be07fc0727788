import { describe, expect, test } from 'vitest';
import { writeDelimited } from '../../../../app/files/write-delimited.ts';
import { writeJcampDx } from '../../../../app/files/write-jcamp-dx.ts';
import type { SpectrumBlock } from '../../../../app/files/spectrum-file.ts';
import { read } from '../../../fixtures/files/made-files.ts';

const block = (over: Partial<SpectrumBlock>): SpectrumBlock => ({
  title: 'made', xUnit: 'nm', yUnit: 'counts', xUnitText: 'nm', yUnitText: 'counts', header: [],
  x: Float64Array.from({ length: 300 }, (_, i) => 400 + i * 0.1), y: Float64Array.from({ length: 300 }, (_, i) => Math.sin(i) * 1000 / 3), ...over,
});
const meta = { dataType: 'PHOTOLUMINESCENCE SPECTRUM', origin: 'Culet', owner: 'made laboratory' };

describe('JCAMP-DX', () => {
  test('an even curve reads back without a warning, ordinates exactly', () => {
    const text = writeJcampDx(block({}), meta);
    const file = read(text);
    expect(text).toContain('##XYDATA= (X++(Y..Y))');
    expect(text.split('\r\n').every((l) => l.length <= 80)).toBe(true);
    expect(file.warnings).toEqual([]);
    expect(file.blocks[0]).toMatchObject({ title: 'made', xUnit: 'nm', yUnit: 'counts' });
    expect([...file.blocks[0]!.y]).toEqual([...block({}).y]);
    file.blocks[0]!.x.forEach((v, i) => expect(v).toBeCloseTo(block({}).x[i]!, 9));
  });
  test('an uneven curve reads back exactly, in both directions', () => {
    const x = Float64Array.from({ length: 50 }, (_, i) => 3000 - i * 10 - Math.sqrt(i));
    const file = read(writeJcampDx(block({ x, y: x.map((v) => 1 / v), xUnit: 'raman-shift', title: 'a ## b $$ c' }), meta));
    expect(file.warnings).toEqual([]);
    expect([...file.blocks[0]!.x]).toEqual([...x]);
    expect(file.blocks[0]!.xUnit).toBe('raman-shift');
    expect(file.blocks[0]!.title).toBe('a # # b $ $ c');
  });
  test.each(['angstrom', 'cm-1', 'ev'] as const)('unit %s', (xUnit) => expect(read(writeJcampDx(block({ xUnit }), meta)).blocks[0]!.xUnit).toBe(xUnit));
  test.each(['absorbance', 'transmittance', 'percent-transmittance', 'percent-reflectance', 'absorption-coefficient', 'arbitrary'] as const)('unit %s', (yUnit) => {
    expect(read(writeJcampDx(block({ yUnit, y: block({}).y.map((v) => v / 1000) }), meta)).blocks[0]!.yUnit).toBe(yUnit);
  });
});

describe('CSV', () => {
  test('curves on one axis read back exactly', () => {
    const a = block({ title: 'table' });
    const b = block({ title: 'girdle, left', y: block({}).y.map((v) => v * 2), yUnit: 'absorbance' });
    const file = read(writeDelimited([a, b]));
    expect(file.blocks.map((k) => [k.xUnit, k.yUnit])).toEqual([['nm', 'counts'], ['nm', 'absorbance']]);
    expect([...file.blocks[1]!.x]).toEqual([...a.x]);
    expect([...file.blocks[1]!.y]).toEqual([...b.y]);
  });
  test('a name can not become a formula', () => expect(writeDelimited([block({ title: '=1+1' })]).split('\r\n')[0]).toBe('Wavelength (nm), =1+1 (counts)'));
  test('different axes bring their own columns', () => {
    const lines = writeDelimited([block({}), block({ x: Float64Array.of(1, 2), y: Float64Array.of(3, 4) })]).trimEnd().split('\r\n');
    expect(lines).toHaveLength(301);
    expect(lines[1]!.split(',').slice(2)).toEqual(['1', '3']);
    expect(lines[300]!.endsWith(',,')).toBe(true);
    const back = read(`${lines.join('\r\n')}\r\n`);
    expect(back.blocks.map((b) => b.x.length)).toEqual([300, 2]);
    expect([...back.blocks[1]!.x, ...back.blocks[1]!.y]).toEqual([1, 2, 3, 4]);
  });
});
