import { describe, expect, test } from 'vitest';
import { readSpectrumFile } from '../../../../app/files/read-spectrum-file.ts';

const POINTS = Array.from({ length: 120 }, (_, i) => [500 + i * 0.5, 100 + 50 * Math.sin(i / 7)] as const);
const body = (separator: string, decimal = '.') => POINTS.map((point) => point.map((v) => v.toFixed(3).replace('.', decimal)).join(separator)).join('\n');
const blockOf = (text: string) => {
  const read = readSpectrumFile('odd.txt', new TextEncoder().encode(text));
  if (!read.ok) throw new Error(read.error.message);
  expect(read.value.blocks).toHaveLength(1);
  return read.value.blocks[0]!;
};

describe('text as small instruments write it', () => {
  test.each<[string, string, string, string]>([
    ['footer with semicolons', `${body('\t')}\n; end of data\n; integration 100 ms\n; laser 532 nm\n`, 'unstated', 'unstated'],
    ['footer with a hash', `# Wavelength (nm)\tCounts\n${body('\t')}\n# averaged 5\n#end\n`, 'nm', 'counts'],
    ['footer of statistics', `${body('\t')}\n\nMean\t100.3\nMax\t150\n`, 'unstated', 'unstated'],
    ['metadata, comma between label and value', `Date,2026-11-25\nOperator,"Invented, Ada"\nX Units,nm\nY Units,Counts\nSerial,12345\n\nWavelength,Intensity\n${body(',')}\n`, 'nm', 'arbitrary'],
    ['metadata, semicolons, decimal comma', `Date;25.11.2026\nTime [ms];100\nWavelength [nm];Intensity\n${body(';', ',')}\n`, 'nm', 'arbitrary'],
    ['quoted cells', `"Wavelength (nm)","Counts"\n${POINTS.map(([x, y]) => `"${x.toFixed(3)}","${y.toFixed(3)}"`).join('\n')}\n`, 'nm', 'counts'],
    ['a separator at each line’s end', `Wavelength (nm),Counts,\n${POINTS.map(([x, y]) => `${x.toFixed(3)},${y.toFixed(3)},`).join('\n')}\n`, 'nm', 'counts'],
    ['axes named in remarks', `! title: stone\n! x: Wavelength (nm)\n! y: Counts\n${body(' ')}\n`, 'nm', 'counts'],
    ['a counting column before the axis', `Index,Wavelength (nm),Counts\n${POINTS.map(([x, y], i) => `${i},${x.toFixed(3)},${y.toFixed(3)}`).join('\n')}\n`, 'nm', 'counts'],
    ['framed data', `>>>>>Begin Data<<<<<\r\n${body('\t').replaceAll('\n', '\r\n')}\r\n>>>>>End Data<<<<<\r\n\r\n`, 'unstated', 'unstated'],
    ['exponents with D', POINTS.map((point) => point.map((v) => v.toExponential(6).replace('e', 'D')).join('  ')).join('\n'), 'unstated', 'unstated'],
  ])('%s', (_name, text, xUnit, yUnit) => {
    const block = blockOf(text);
    expect([block.xUnit, block.yUnit]).toEqual([xUnit, yUnit]);
    expect(block.x).toHaveLength(POINTS.length);
    POINTS.forEach(([x, y], i) => {
      expect(block.x[i]).toBeCloseTo(x, 3);
      expect(block.y[i]).toBeCloseTo(y, 3);
    });
  });
});
