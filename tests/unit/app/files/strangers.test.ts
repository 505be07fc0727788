import { describe, expect, test } from 'vitest';
import { readSpectrumFile } from '../../../../app/files/read-spectrum-file.ts';

const read = (text: string) => readSpectrumFile('made.txt', new TextEncoder().encode(text));
const rows = (n: number, row: (i: number) => string) => Array.from({ length: n }, (_, i) => row(i)).join('\n');
const smooth = (i: number) => Math.round(1000 * (2 + Math.sin(i / 9))) / 1000;

describe('tables that would be read wrongly', () => {
  test.each([['.', ';'], [',', '\t']])('thousands set apart by “%s” are refused where whole numbers stand beside them', (mark, separator) => {
    const grouped = (v: number) => (v < 1000 ? String(v) : `${Math.floor(v / 1000)}${mark}${String(v % 1000).padStart(3, '0')}`);
    const result = read(rows(60, (i) => `${400 + i}${separator}${grouped(940 + 3 * i)}`));
    expect(result.ok ? result.value.blocks[0]?.y.slice(0, 3) : result.error).toMatchObject({ code: 'thousands-separator', line: 21 });
  });
  test('three decimals everywhere are decimals', () => {
    const result = read(rows(60, (i) => `${400 + i}\t${smooth(i).toFixed(3)}`));
    expect(result.ok && result.value.blocks[0]?.y[0]).toBe(2);
  });
  test('a pair of numbers of the header right above the table is no point', () => {
    const result = read(`100 5\n${rows(60, (i) => `${400 + i} ${smooth(i)}`)}`);
    expect(result.ok ? null : result.error).toMatchObject({ code: 'stray-rows', line: 1 });
  });
  test.each(['X1,Y1,X2,Y2\n', 'wl_a,counts_a,wl_b,counts_b\n', ''])('two pairs side by side are two curves (%s)', (head) => {
    const result = read(head + rows(60, (i) => `${400 + i},${smooth(i)},${400.5 + i},${smooth(i + 20)}`));
    expect(result.ok && result.value.blocks.map((b) => [b.x[0], b.y[0]])).toEqual([[400, 2], [400.5, smooth(20)]]);
  });
  test('lost rows are told', () => {
    const result = read(rows(100, (i) => `${i < 50 ? 400 + i : 430 + i}\t${smooth(i)}`));
    expect(result.ok && result.value.warnings.find((w) => w.code === 'gap')).toMatchObject({ line: 51, message: expect.stringContaining('about 30 points') as string });
  });
  test('an axis with steps of many sizes has no gap', () => {
    const result = read(rows(60, (i) => `${(400 + i * i * 0.5).toFixed(2)}\t${smooth(i)}`));
    expect(result.ok && result.value.warnings.map((w) => w.code)).not.toContain('gap');
  });
});

describe('JCAMP-DX as some write it', () => {
  const head = '##TITLE=made\n##JCAMP-DX=4.24\n##DATA TYPE=INFRARED SPECTRUM\n##ORIGIN=\n##OWNER=\n##XUNITS=1/CM\n##YUNITS=ABSORBANCE\n';
  test('the last bracket of the even form may be missing', () => {
    const result = read(`${head}##XFACTOR=1\n##YFACTOR=0.5\n##FIRSTX=400\n##LASTX=403\n##NPOINTS=4\n##XYDATA=(X++(Y..Y)\n400 2 4 6 8\n##END=\n`);
    expect(result.ok && [...result.value.blocks[0]!.y]).toEqual([1, 2, 3, 4]);
  });
  test('words of an assignment may hold brackets', () => {
    const result = read(`${head}##NPOINTS=2\n##PEAK ASSIGNMENTS=(XYA)\n(1332.4, 100, <F2g (zone centre)>)\n(2666.0, 7, <second order>)\n##END=\n`);
    expect(result.ok && [...result.value.blocks[0]!.x]).toEqual([1332.4, 2666]);
  });
});

describe('tables of another shape', () => {
  const blocksOf = (text: string) => { const result = read(text); return result.ok ? result.value.blocks.map((b) => [b.title, b.x.length, b.xUnit, b.x[0], b.y[0]]) : result.error.code; };
  const short = (i: number, n: number) => (i < n ? `${500 + 2 * i},${smooth(i + 20)}` : ',');
  test.each([[40, 60], [60, 60]])('a second curve of %i of %i points is read whole, and its length told', (n, of) => {
    const result = read(`Wavelength (nm),table (counts),Wavelength (nm),girdle (counts)\n${rows(of, (i) => `${400 + i},${smooth(i)},${short(i, n)}`)}\n`);
    expect(result.ok && result.value.blocks.map((b) => [b.x.length, b.xUnit, b.yUnit, b.x.at(-1)])).toEqual([[of, 'nm', 'counts', 400 + of - 1], [n, 'nm', 'counts', 500 + 2 * (n - 1)]]);
    expect(result.ok && result.value.warnings.some((w) => w.code === 'curves-of-different-lengths')).toBe(n !== of);
  });
  test('the first may be the shorter, and names may be missing', () => {
    expect(blocksOf(rows(60, (i) => `${short(i, 40)},${400 + i},${smooth(i)}`))).toEqual([['made · 1', 40, 'unstated', 500, smooth(20)], ['made · 2', 60, 'unstated', 400, 2]]);
  });
  test.each<[string, (i: number) => string]>([
    ['a hole in a curve', (i) => `${400 + i},${smooth(i)},${i === 30 ? ',' : short(i, 60)}`],
    ['half a pair', (i) => `${400 + i},${smooth(i)},${i < 40 ? short(i, 60) : `${500 + 2 * i},`}`],
    ['rows without their separators', (i) => (i < 40 ? `${400 + i},${smooth(i)},${short(i, 60)}` : `${400 + i},${smooth(i)}`)],
  ])('%s is damage', (_, row) => expect(blocksOf(rows(60, row))).toBe('broken-line'));
  test('ordinates that end early are no axis', () => {
    expect(blocksOf(`Wavelength,a,b,c\n${rows(60, (i) => `${400 + i},${smooth(i)},${i < 40 ? `${i + 0.5},${smooth(i)}` : ','}`)}`)).toBe('broken-line');
  });
  test('a table framed by strokes', () => {
    expect(blocksOf(`| Wavelength (nm) | Counts |\n|---|---|\n${rows(30, (i) => `| ${400 + i} | ${smooth(i)} |`)}`)).toEqual([['made', 30, 'nm', 400, 2]]);
    expect(blocksOf(rows(30, (i) => `;${400 + i};${smooth(i)}`))).toEqual([['made', 30, 'unstated', 400, 2]]);
  });
  test('a decimal comma at the beginning is no frame', () => expect(blocksOf(rows(30, (i) => `,${10 + i};${smooth(i).toFixed(3).replace('.', ',')}`))).toEqual([['made', 30, 'unstated', 0.1, 2]]));
  test('names that are more than the columns are not guessed at, and that is told', () => {
    const result = read(`Index,Wavelength (nm),Counts\n${rows(30, (i) => `${400 + i},${smooth(i)}`)}`);
    expect(result.ok && result.value.blocks.map((b) => [b.xUnit, b.yUnit])).toEqual([['unstated', 'unstated']]);
    expect(result.ok && result.value.warnings.find((w) => w.code === 'names-differ')?.message).toMatch(/names 3 columns, the table has 2/);
  });
  test('a first column that never changes is no axis', () => {
    const result = read(rows(30, (i) => `1\t${400 + i}\t${smooth(i)}`));
    expect(result.ok && result.value.blocks.map((b) => [b.x[0], b.y[0]])).toEqual([[400, 2]]);
    expect(result.ok && result.value.warnings.map((w) => w.code)).toContain('constant-column');
  });
});
