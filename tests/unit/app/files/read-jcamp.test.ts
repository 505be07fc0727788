import { describe, expect, test } from 'vitest';
import { codes, FIRST_DATA_LINE, jcamp, NTUPLES_FILE, read, refused, rows, TEN_POINTS } from '../../../fixtures/files/made-files.ts';

/** 200 points of 1 2 3 4 5 on 40 lines, line k replaced by `line`. */
const long = (k: number, line: string, header: Record<string, string | undefined> = {}): string =>
  jcamp(rows((i) => (i === k ? line : `${i * 5} 1 2 3 4 5`), 40), { LASTX: '199', NPOINTS: '200', ...header });

describe('what is read', () => {
  test('x comes from FIRSTX, LASTX and NPOINTS; XFACTOR scales only the lines', () => {
    const file = read(jcamp('800 1 2 3 3 2\n810 1 0 -1 -2 -3', { XFACTOR: '0.5', YFACTOR: '0.1', FIRSTX: '400', LASTX: '409', FIRSTY: '0.1' }));
    expect(file.warnings).toEqual([]);
    expect([...file.blocks[0]!.x]).toEqual([400, 401, 402, 403, 404, 405, 406, 407, 408, 409]);
    expect(file.blocks[0]!.y[2]).toBeCloseTo(0.3, 12);
    expect(file.blocks[0]).toMatchObject({ title: 'made', xUnit: 'cm-1', yUnit: 'absorbance', xUnitText: '1/CM' });
  });
  test.each(['\r\n', '\r'])('line ends %j, a byte-order mark, labels in other spelling, comments', (end) => {
    const text = `\uFEFF${jcamp('0AJT%jX $$ all\n$$ remark\n9c')}`.replace('##FIRSTX', '##first_x').replace('##XYDATA', '##XY-Data').replaceAll('\n', end);
    expect([...read(text).blocks[0]!.y]).toEqual(TEN_POINTS);
  });
  test('descending x with a DELTAX of the wrong sign', () => {
    const file = read(jcamp('9 1 2 3 3 2 1 0 -1 -2 -3', { FIRSTX: '9', LASTX: '0', DELTAX: '1' }));
    expect([file.blocks[0]!.x[0], file.blocks[0]!.x[9]]).toEqual([9, 0]);
  });
  test.each([
    ['pairs by commas and blanks', '0, 1\n2, 5\n7, 2', 'XYPOINTS=(XY..XY)'],
    ['pairs by semicolons under XYDATA', '0,1;2,5;7,2', 'XYDATA= (XY..XY)'],
    ['one point a line under an even label', '0 1\n2 5\n7 2', 'XYDATA=(X++(Y..Y))'],
  ])('uneven x: %s', (_, table, label) => {
    const block = read(jcamp(table, { LASTX: '7', NPOINTS: '3' }, label)).blocks[0]!;
    expect([...block.x]).toEqual([0, 2, 7]);
    expect([...block.y]).toEqual([1, 5, 2]);
  });
  test('decimal commas in pairs, told apart from separating commas by NPOINTS', () => {
    const file = read(jcamp('0,5 1,5\n1,5 2,5\n2,5 3,5', { FIRSTX: '0,5', LASTX: '2,5', NPOINTS: '3', FIRSTY: '1,5' }, 'XYPOINTS=(XY..XY)'));
    expect([...file.blocks[0]!.x]).toEqual([0.5, 1.5, 2.5]);
    expect(codes(file)).toEqual(['decimal-comma']);
  });
  test.each([
    ['PEAK TABLE=(XY..XY)', '900, 1\n500, 7 700, 3'],
    ['PEAKTABLE=(XYW..XYW)', '900, 1, 5\n500, 7, 5\n700, 3, 4'],
    ['PEAK ASSIGNMENTS=(XYA)', '(900, 1, <a, b>)\n(500, 7, <c>)\n(700, 3, <d 4>)'],
  ])('a list of peaks in any order: %s', (label, table) => {
    const file = read(jcamp(table, { NPOINTS: '3' }, label));
    expect([...file.blocks[0]!.x]).toEqual([900, 500, 700]);
    expect(file.blocks[0]!.peaksOnly).toBe(true);
    expect(codes(file)).toContain('peak-table');
  });
  test('blocks: LINK, and several titles without LINK, one of them without END', () => {
    const one = jcamp('0AJT%jX\n9c');
    const link = read(`##TITLE=both\n##JCAMP-DX=4.24\n##DATA TYPE=LINK\n##BLOCKS=2\n${one}${one.replace('made', 'second')}##END=\n`);
    expect(link.blocks.map((b) => b.title)).toEqual(['made', 'second']);
    expect(link.warnings).toEqual([]);
    const loose = read(jcamp('0AJT%jX\n9c', {}, undefined, '') + one);
    expect(loose.blocks).toHaveLength(2);
    expect(codes(loose)).toEqual(['missing-end']);
  });
  test('NTUPLES: one curve for each page', () => {
    const file = read(NTUPLES_FILE);
    expect(file.warnings).toEqual([]);
    expect(file.blocks.map((b) => [b.title, b.xUnit, b.yUnit])).toEqual([['pages · REAL · N=1', 'nm', 'counts'], ['pages · IMAGINARY · N=2', 'nm', 'counts']]);
    expect([...file.blocks[1]!.y]).toEqual(TEN_POINTS.map((v) => 2 * v));
    expect([file.blocks[1]!.x[0], file.blocks[1]!.x[9]]).toEqual([400, 409]);
  });
  test('1/CM of a Raman spectrum are shifts; transmittance above 5 is per cent', () => {
    expect(read(jcamp('0AJT%jX\n9c', { 'DATA TYPE': 'RAMAN SPECTRUM' })).blocks[0]!.xUnit).toBe('raman-shift');
    const percent = read(jcamp('0 50 60', { YUNITS: 'TRANSMITTANCE', LASTX: '1', NPOINTS: '2', FIRSTY: '50' }));
    expect(percent.blocks[0]!.yUnit).toBe('percent-transmittance');
    expect(codes(percent)).toEqual(['percent-values']);
  });
});

describe('a mismatch that leaves the data usable is a warning', () => {
  test.each<[string, string]>([
    ['firsty', jcamp('0AJT%jX\n9c', { FIRSTY: '7' })],
    ['maxy', jcamp('0AJT%jX\n9c', { MAXY: '30' })],
    ['miny', jcamp('0AJT%jX\n9c', { MINY: '-30' })],
    ['y-check', jcamp('0AJT%jX\n9d')],
    ['npoints', jcamp('0AJT%jX\n9c', { NPOINTS: '11' })],
    ['npoints-missing', jcamp('0AJT%jX\n9c', { NPOINTS: undefined })],
    ['missing-end', jcamp('0AJT%jX\n9c', {}, undefined, '')],
    ['factor-missing', jcamp('0AJT%jX\n9c', { YFACTOR: undefined })],
    ['x-check', long(7, '99 1 2 3 4 5')],
    ['lastx', long(-1, '', { LASTX: '300', DELTAX: '1' })],
  ])('%s', (code, text) => expect(codes(read(text))).toContain(code));
  test('an invalid ordinate is a gap, and the other points keep their x', () => {
    const file = read(jcamp('0 1 2 ? 3 2 1 0 -1 -2 -3'));
    expect([...file.blocks[0]!.x]).toEqual([0, 1, 3, 4, 5, 6, 7, 8, 9]);
    expect(codes(file)).toEqual(['invalid-ordinate']);
  });
});

describe('a break is a refusal with line and reason', () => {
  test.each<[string, string, number | undefined]>([
    ['malformed-token', jcamp('0 1 2 3 3 2\n5 1 oops'), FIRST_DATA_LINE + 1],
    ['malformed-token', jcamp('0 1 2 3 3 2\n5 1 1.2.3'), FIRST_DATA_LINE + 1],
    ['malformed-token', jcamp('0 1 2 3 3 2\n5B2C3'), FIRST_DATA_LINE + 1],
    ['malformed-token', jcamp('0 1 2 3 3 2\ngarbage'), FIRST_DATA_LINE + 1],
    ['malformed-token', jcamp('0A?JJ'), FIRST_DATA_LINE],
    ['malformed-token', jcamp('0AZ99999999'), FIRST_DATA_LINE],
    ['cut-off', jcamp('0 1 2 3 3 2', {}, undefined, ''), FIRST_DATA_LINE],
    ['too-many-points', jcamp('0 1 2 3 3 2 1 0 -1 -2 -3 1 1 1'), FIRST_DATA_LINE],
    ['points-lost', long(7, '35 1 2 3 4'), FIRST_DATA_LINE + 8],
    ['points-lost', long(7, '$$'), FIRST_DATA_LINE + 8],
    ['x-off-grid', long(-1, '', { LASTX: '300' }), undefined],
    ['firstx-lastx', jcamp('0AJT%jX\n9c', { LASTX: '0' }), undefined],
    ['factor-zero', jcamp('0AJT%jX\n9c', { YFACTOR: '0' }), undefined],
    ['header-number', jcamp('0AJT%jX\n9c', { XFACTOR: 'NaN' }), undefined],
    ['not-finite', jcamp('0 1e+200 1e+300', { YFACTOR: '1e200', LASTX: '1', NPOINTS: '2' }), undefined],
    ['axis-turns', jcamp('0,1\n2,3\n1,4', { LASTX: '1', NPOINTS: '3' }, 'XYPOINTS=(XY..XY)'), FIRST_DATA_LINE + 2],
    ['malformed-token', jcamp('0,1\n2\n3,4', { LASTX: '3', NPOINTS: '3' }, 'XYPOINTS=(XY..XY)'), FIRST_DATA_LINE + 1],
    ['too-few-points', jcamp('0 1', { NPOINTS: '1' }), undefined],
    ['unknown-form', jcamp('0 1', {}, 'XYDATA=(SOMETHING ELSE)'), undefined],
    ['no-data', '##TITLE=x\n##JCAMP-DX=4.24\n##END=\n', undefined],
  ])('%s', (code, text, line) => {
    const error = refused(text);
    expect(error.code).toBe(code);
    expect(error.message).toContain('made.txt');
    if (line !== undefined) expect(error.line).toBe(line);
  });
  test('one damaged block refuses the whole file', () => {
    expect(refused(jcamp('0AJT%jX\n9c') + jcamp('0 1 2 3 3 2\n5 1 oops')).code).toBe('malformed-token');
  });
});
