import { convert } from 'jcampconverter';
import { describe, expect, test } from 'vitest';
import { jcamp, NTUPLES_FILE, read, TEN_POINTS } from '../../fixtures/files/made-files.ts';

const ordinates = (table: string, n: number, first: number, x0 = '0', x1 = String(n - 1)): number[] =>
  [...read(jcamp(table, { NPOINTS: String(n), FIRSTX: x0, LASTX: x1, FIRSTY: String(first) })).blocks[0]!.y];

// McDonald & Wilks, Appl. Spectrosc. 42 (1988) 151, Table VIIb: the same ten ordinates in every form.
describe('Table VIIb', () => {
  test.each([
    ['FIX', '0 1 2 3 3 2 1 0 -1 -2 -3'], ['PAC', '0+1+2+3+3+2+1+0-1-2-3'], ['SQZ', '0ABCCBA@abc'], ['SQZ, first plain', '0 1BCCBA@abc'],
    ['DIF', '0AJJ%jjjjjj\n9c'], ['DIF, first plain', '0 1JJ%jjjjjj\n9c'], ['DIFDUP', '0AJT%jX\n9c'], ['DIFDUP, first plain', '0 1JT%jX\n9c'],
  ])('%s', (_, table) => {
    const text = jcamp(table);
    expect([...read(text).blocks[0]!.y]).toEqual(TEN_POINTS);
    expect(read(text).warnings).toEqual([]);
  });
});

// The same paper's Table VI, 53 ordinates; its print has misprints, corrected by several independent decoders.
describe('Table VI', () => {
  const y = [0, 0, 0, 0, 2, 4, 4, 4, 7, 5, 4, 4, 5, 5, 7, 10, 11, 11, 6, 5, 7, 6, 9, 9, 7, 10, 10, 9, 10, 11, 12, 15, 16, 16, 14, 17, 38, 38, 35, 38, 42, 47, 54, 59, 66, 75, 78, 88, 96, 104, 110, 121, 128];
  test.each([
    ['DIFDUP', '599.860@VKT%TLkj%J%KLJ%njKjL%kL%jJULJ%kLK1%lLMNPNPRLJ0QTOJ1P\n700.158A28'],
    ['DIF', '599.860@%%%KK%%Lkj%J%KLJ%njKjL%kL%jJJJLJ%kLK1%lLMNPNPRLJ0QQOJ1P\n700.158A28'],
    ['SQZ', '599.860@@@@BDDDGEDDEEGA0A1A1FEGFIIGA0A0IA0A1A2A5A6A6A4A7C8C8C5C8D2D7E4E9F6G5G8H8I6A04A10A21A28'],
    ['PAC', '599.860+0+0+0+0+2+4+4+4+7+5+4+4+5+5+7+10+11+11+6+5+7+6+9+9+7+10+10+9+10+11+12+15+16+16+14+17+38+38+35+38+42+47+54+59+66+75+78+88+96+104+110+121+128'],
  ])('%s', (_, table) => expect(ordinates(table, 53, 0, '599.860', '700.158')).toEqual(y));
});

// Worked by hand from the paper's rules.
describe('single rules', () => {
  test.each<[string, string, number[]]>([
    ['differences of 0 repeated nine times', '0A000@%s', [1000, ...Array<number>(10).fill(0)]],
    ['negative SQZ', '0a0j0', [-10, -20]],
    ['nine differences of 9', '0I9Rs', [99, 108, 117, 126, 135, 144, 153, 162, 171, 180]],
    ['a value repeated', '0b5U', [-25, -25, -25]],
    ['checks over three lines', '0A00NOPQ\n4A26RJ0J1J2\n8A68J3J4J5\n11B10', [100, 105, 111, 118, 126, 135, 145, 156, 168, 181, 195, 210]],
    ['"E" is 5 in a compressed table', '0E0E1E2', [50, 51, 52]],
    ['"E" is an exponent in a plain one', '0 1.0E0 2.0E+00 3e-1', [1, 2, 0.3]],
  ])('%s', (_, table, y) => expect(ordinates(table, y.length, y[0]!)).toEqual(y));
});

// A second, independent decoder of the same format.
describe('agrees with jcampconverter', () => {
  test.each([
    ['DIFDUP', jcamp('0A00NOPQ\n4A26RJ0J1J2\n8A68J3J4J5\n11B10', { NPOINTS: '12', LASTX: '11', FIRSTY: '100' })],
    ['factors, descending', jcamp('18+10-20+30\n12+5+6+7', { XFACTOR: '0.5', YFACTOR: '0.01', FIRSTX: '9', LASTX: '4', NPOINTS: '6', FIRSTY: '0.1' })],
    ['pairs', jcamp('0, 1\n2, 5\n7, 2', { LASTX: '7', NPOINTS: '3' }, 'XYDATA=(XY..XY)')],
  ])('%s', (_, text) => {
    const theirs = convert(text).flatten[0]!.spectra[0]!.data as { x: number[]; y: number[] };
    const ours = read(text).blocks[0]!;
    expect(ours.x.length).toBe(theirs.x.length);
    theirs.x.forEach((v, i) => expect(ours.x[i]).toBeCloseTo(v, 10));
    theirs.y.forEach((v, i) => expect(ours.y[i]).toBeCloseTo(v, 10));
  });
  test('NTUPLES pages', () => {
    const theirs = convert(NTUPLES_FILE).flatten[0]!.spectra.map((s) => (s.data as { y: number[] }).y);
    expect(read(NTUPLES_FILE).blocks.map((b) => [...b.y])).toEqual(theirs.map((y) => [...y]));
  });
});
