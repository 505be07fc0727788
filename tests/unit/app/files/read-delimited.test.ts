import { describe, expect, test } from 'vitest';
import { codes, read, refused, rows } from '../../../fixtures/files/made-files.ts';

const first = (text: string | Uint8Array): [number, number, number] => {
  const b = read(text).blocks[0]!;
  return [b.x.length, b.x[1]!, b.y[1]!];
};
const latin1 = (text: string): Uint8Array => Uint8Array.from(Buffer.from(text, 'latin1'));
const utf16 = (text: string, big: boolean): Uint8Array => {
  const b = Buffer.from(text, 'utf16le');
  return Uint8Array.from(big ? b.swap16() : b);
};

describe('separators, decimals and encodings', () => {
  test.each([
    ['tab and decimal comma', rows((i) => `${400 + i},5\t0,${i + 1}`)],
    ['semicolon and decimal comma', rows((i) => `${400 + i},5;0,${i + 1}`)],
    ['comma and decimal point', rows((i) => `${400 + i}.5,0.${i + 1}`)],
    ['semicolon and padding', rows((i) => `  ${400 + i}.5;   0.${i + 1}`)],
    ['blanks and decimal comma', rows((i) => ` ${400 + i},5   0,${i + 1}`)],
    ['quotes around decimal commas', rows((i) => `"${400 + i},5","0,${i + 1}"`)],
    ['exponents', rows((i) => `${400 + i}.5 ${i + 1}E-1`)],
    ['CR only', rows((i) => `${400 + i}.5 0.${i + 1}`, 20, '\r')],
    ['CRLF, mark, remarks', `\uFEFF# {"a": 1}\r\n${rows((i) => `${400 + i}.5\t0.${i + 1}${i === 4 ? '\r\n# paused' : ''}`, 20, '\r\n')}`],
  ])('%s', (_, text) => expect(first(text)).toEqual([20, 401.5, 0.2]));
  test.each([['LE', false], ['BE', true]])('UTF-16%s with and without mark', (_, big) => {
    const text = `Spectrum\r\n${rows((i) => `${400 + i}.5\t0.${i + 1}`)}`;
    expect(first(utf16(text, big))).toEqual([20, 401.5, 0.2]);
    expect(first(utf16(`\uFEFF${text}`, big))).toEqual([20, 401.5, 0.2]);
  });
  test('Latin-1 names, per cent and nanometres', () => {
    const block = read(latin1(`Wellenlänge [nm]\tTransmission [%]\n${rows((i) => `${400 + i}\t${50 + i}`)}`)).blocks[0]!;
    expect(block).toMatchObject({ xUnit: 'nm', yUnit: 'percent-transmittance', xUnitText: 'Wellenlänge [nm]' });
  });
  test('commas that could be thousands separators are decimal commas, and told; mixtures are refused', () => {
    expect(codes(read(rows((i) => `${400 + i}\t1,${100 + i}`)))).toContain('decimal-comma');
    expect(refused(rows((i) => `${400 + i}.5\t1,${100 + i}`)).message).toContain('thousands');
    expect(refused(rows((i) => `${400 + (i >> 1)},${(i % 2) * 5},0,${i}`)).code).toBe('ambiguous-comma');
  });
});

describe('units and columns', () => {
  test.each([
    ['Wavelength (nm),Absorbance', 'nm', 'absorbance'],
    ['Raman shift/cm-1, Counts', 'raman-shift', 'counts'],
    ['Wavenumber [1/cm],%T', 'cm-1', 'percent-transmittance'],
    ['Wavelength (Å),Intensity', 'angstrom', 'arbitrary'],
    ['Energy (eV),Reflectance', 'ev', 'reflectance'],
    ['# Raman shift/cm-1 Intensity', 'raman-shift', 'arbitrary'],
  ])('%s', (names, xUnit, yUnit) => {
    expect(read(`${names}\n${rows((i) => `${400 + i},0.${i}`)}`).blocks[0]).toMatchObject({ xUnit, yUnit });
  });
  test('a unit that is not said is told, or taken from the user', () => {
    const text = `Laser wavelength: 532 nm\n${rows((i) => `${400 + i} ${i}`)}`;
    expect(read(text).blocks[0]!.xUnit).toBe('unstated');
    expect(codes(read(text))).toContain('unit-not-stated');
    expect(read(text, { xUnit: 'angstrom', yUnit: 'counts' }).blocks[0]).toMatchObject({ xUnit: 'angstrom', yUnit: 'counts' });
    expect(read(`X Units: nm\n${text}`, { xUnit: 'angstrom' }).blocks[0]!.xUnit).toBe('nm');
  });
  test('names with a line of units; the result is taken and the raw columns named', () => {
    const file = read(`Wave;Sample;Dark;Ref;Reflectance\n[nm];[counts];[counts];[counts];[%]\n\n${rows((i) => `${400 + i};1;2;3;${50 + i}`)}`);
    expect(file.blocks).toHaveLength(1);
    expect(file.blocks[0]).toMatchObject({ xUnit: 'nm', yUnit: 'percent-reflectance' });
    expect(file.blocks[0]!.y[0]).toBe(50);
    expect(file.warnings[0]).toMatchObject({ code: 'columns-chosen' });
    expect(file.warnings[0]!.message).toContain('Dark');
  });
  test('several curves are several blocks', () => {
    const file = read(`Wavelength (nm),Table up,Table down\n${rows((i) => `${400 + i},${i},${2 * i}`)}`);
    expect(file.blocks.map((b) => [b.title, b.y[3]])).toEqual([['Table up', 3], ['Table down', 6]]);
    const pairs = read(`Wavelength (nm),A,Wavelength (nm),B\n${rows((i) => `${400 + i},${i},${500 + i},${2 * i}`)}`);
    expect(pairs.blocks.map((b) => [b.x[0], b.y[3]])).toEqual([[400, 3], [500, 6]]);
    const below = read(`${rows((i) => `${400 + i} 1`)}\n\n${rows((i) => `${400 + i} 2`)}`);
    expect(below.blocks.map((b) => b.y[0])).toEqual([1, 2]);
  });
  test('counting columns', () => {
    const three = read(rows((i) => `${i} ${400 + 0.7 * i} ${i * i}`));
    expect(three.blocks).toHaveLength(1);
    expect(three.blocks[0]!.x[1]).toBeCloseTo(400.7, 12);
    expect(codes(three)).toContain('index-column');
    const two = read(rows((i) => `${i} ${i * i}`), { xUnit: 'nm' });
    expect(two.blocks[0]!.xUnit).toBe('pixel');
    expect(codes(two)).toContain('pixel-axis');
  });
  test('footers, promised numbers of points, repeated x', () => {
    const text = `>>>>>Begin<<<<<\n${rows((i) => `${400 + i} 1`)}>>>>>End<<<<<\n`;
    expect(read(text).blocks[0]!.x).toHaveLength(20);
    expect(codes(read(text.replace(/>>>>>End.*\n/, '')))).toContain('missing-end');
    expect(refused(`Number of points: 90\n${text}`).code).toBe('cut-off');
    expect(codes(read(rows((i) => `${i === 5 ? 404 : 400 + i} 1`)))).toContain('x-repeated');
  });
});

describe('a damaged line refuses the file and is named', () => {
  const at = (k: number, line: string): string => rows((i) => (i === k ? line : `${400 + i} 1.5`));
  test.each(['409 NaN', '409 1.2.3', '#### 1.5', '409', '409 1.5410 1.5', 'oops', '409 1.5 7', '409 ####', '409;1.5'])('in the middle: %s', (line) => {
    expect(refused(at(9, line))).toMatchObject({ code: 'broken-line', line: 10 });
  });
  test.each(['419 NaN', '41', '419.', '419 1.5e'])('at the end: %s', (line) => expect(refused(at(19, line))).toMatchObject({ code: 'broken-line', line: 20 }));
  test.each([['400 NaN', 0], ['400', 0], ['xx', 1]])('at the beginning: %s', (line, k) => expect(refused(at(k, line))).toMatchObject({ code: 'broken-line', line: k + 1 }));
  test('an axis that turns names the line where it turns', () => {
    expect(refused(rows((i) => `${400 + (i % 10)} 1`))).toMatchObject({ code: 'axis-turns', line: 11 });
  });
});

describe('what is no spectrum', () => {
  test.each<[string, string | Uint8Array]>([
    ['empty-file', ''],
    ['empty-file', ' \r\n \n'],
    ['empty-file', new Uint8Array(512)],
    ['binary-file', Uint8Array.from([1, 2, 3, 0, 0, 4, 5, 6, 7, 0, 9])],
    ['not-a-spectrum', '<!DOCTYPE html><html><body>404</body></html>'],
    ['not-a-spectrum', '%PDF-1.7\n'],
    ['not-a-spectrum', '{"a": 1}'],
    ['no-data', 'Dear colleague,\nno numbers here.\n'],
    ['one-column', rows((i) => `${400 + i}`)],
    ['too-few-points', '400 1\n'],
    ['curves-in-rows', `${rows((i) => `${400 + i}`, 20, '\t')}\n${rows((i) => `${i}`, 20, '\t')}`],
  ])('%s', (code, content) => expect(refused(content).code).toBe(code));
});

describe('headers whose words deceive', () => {
  test.each([
    ['##NAMES=Made\n##RAMAN WAVELENGTH=532', '##END='],
    ['time (s),x', ''],
    ['Laser wavelength: 532', ''],
  ])('%s', (head, foot) => {
    const block = read(`${head}\n${rows((i) => `${400 + i},${(i * 7) % 5}.5`)}${foot}\n`).blocks[0]!;
    expect([block.x[1], block.y[1]]).toEqual([401, 2.5]);
  });
  test('axis units in entries; 1/CM may be shifts where the user says so', () => {
    const text = `#Axis unit 1=\tCnt\n#Axis unit 2=\t1/cm\n${rows((i) => `${400 + i}\t0.5`)}`;
    expect(read(text).blocks[0]).toMatchObject({ xUnit: 'cm-1', yUnit: 'counts' });
    expect(read(text, { xUnit: 'raman-shift' }).blocks[0]!.xUnit).toBe('raman-shift');
    expect(read(text, { xUnit: 'nm' }).blocks[0]!.xUnit).toBe('cm-1');
  });
});

describe('headers that are numbers', () => {
  test('the number of points, even where it looks like a neighbour of the first x', () => {
    expect(read(`20\n${rows((i) => `${21 + i} 1.5`)}`).blocks[0]!.x[0]).toBe(21);
  });
  test('a calibration line and words above the table', () => {
    expect(read(`1.5 0.25\nlamp off\n${rows((i) => `${400 + i} 1.5`)}`).blocks[0]!.x).toHaveLength(20);
  });
});
