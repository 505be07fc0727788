import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { runCaptured } from './run-captured.ts';

const jcamp = (title: string, more = '') => `##TITLE=${title}\r\n##JCAMP-DX=4.24\r\n##DATA TYPE=INFRARED SPECTRUM\r\n##XUNITS=1/CM\r\n##YUNITS=ABSORBANCE\r\n##FIRSTX=4000\r\n##LASTX=3000\r\n##NPOINTS=5\r\n##XFACTOR=1\r\n##YFACTOR=0.5\r\n##FIRSTY=0.5\r\n##XYDATA=(X++(Y..Y))\r\n4000 1 2 3\r\n3250 4 5\r\n##END=\r\n${more}`;

/** One line of Lorentz's shape at 736.8 nm on a flat ground, and the diamond line of a 532 nm laser at 572.6 nm, with seeded noise. */
function luminescence(scale = 1): string {
  let state = 1;
  const noise = () => { state = (Math.imul(state, 1664525) + 1013904223) >>> 0; return (state / 2 ** 32 - 0.5) * 4; };
  const line = (x: number, at: number, width: number, height: number) => height / (1 + ((x - at) / (width / 2)) ** 2);
  return Array.from({ length: 2400 }, (_unused, i) => {
    const x = 540 + i * 0.1;
    return `${(x * scale).toFixed(3)}\t${(200 + line(x, 736.8, 4.5, 900) + line(x, 572.6, 0.4, 600) + noise()).toFixed(3)}`;
  }).join('\n');
}

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'culet-cli-'));
  mkdirSync(path.join(folder, 'measurements', 'older'), { recursive: true });
  mkdirSync(path.join(folder, 'empty'));
  writeFileSync(path.join(folder, 'ir.jdx'), jcamp('Invented stone'));
  writeFileSync(path.join(folder, 'measurements', 'b.jdx'), jcamp('B'));
  writeFileSync(path.join(folder, 'measurements', 'a.jdx'), jcamp('A'));
  writeFileSync(path.join(folder, 'measurements', '.hidden'), 'x');
  writeFileSync(path.join(folder, 'two.jdx'), jcamp('First', jcamp('Second')));
  writeFileSync(path.join(folder, 'pl.txt'), luminescence());
  writeFileSync(path.join(folder, 'pl-angstrom.txt'), luminescence(10));
  writeFileSync(path.join(folder, 'pl-nm.txt'), `Wavelength (nm)\tCounts\n${luminescence()}`);
  writeFileSync(path.join(folder, 'broken.jdx'), jcamp('Broken').replace('4 5', '4 $$x5?'));
});
afterAll(() => { rmSync(folder, { recursive: true, force: true }); });

const culet = (...args: string[]) => runCaptured(args, { workingFolder: folder });
type Entry = Record<string, unknown> & { file: string; ok: boolean };
const json = (text: string) => JSON.parse(text) as Entry[];

describe('read', () => {
  test('prints one entry for each file, in the agreed shape', async () => {
    const { code, out, err } = await culet('read', 'ir.jdx', '--json');
    expect(code).toBe(0);
    expect(err).toBe('');
    const [entry, ...others] = json(out);
    expect(others).toEqual([]);
    expect(entry).toMatchObject({ file: 'ir.jdx', ok: true, format: 'jcamp-dx', sha256: createHash('sha256').update(jcamp('Invented stone')).digest('hex') });
    expect(entry!['blocks']).toEqual([{ title: 'Invented stone', xUnit: 'cm-1', yUnit: 'absorbance', points: 5, firstX: 4000, lastX: 3000, minY: 0.5, maxY: 2.5 }]);
    expect(Object.keys(entry!).sort()).toEqual(['blocks', 'file', 'format', 'ok', 'sha256', 'warnings']);
  });

  test('one bad file fails the command and leaves the others', async () => {
    const { code, out } = await culet('read', 'missing.jdx', 'ir.jdx', 'broken.jdx', '--json');
    expect(code).toBe(1);
    expect(json(out).map(({ file, ok }) => [file, ok])).toEqual([['missing.jdx', false], ['ir.jdx', true], ['broken.jdx', false]]);
    expect(json(out)[0]!['error']).toMatchObject({ code: 'missing', message: expect.stringContaining('“missing.jdx” is not there') as string });
    expect(json(out)[0]).not.toHaveProperty('sha256');
    expect(json(out)[2]).toHaveProperty('sha256');
  });

  test('a folder stands for the files in it, sorted, without hidden ones and folders', async () => {
    const { code, out } = await culet('read', 'measurements', '--json');
    expect(code).toBe(0);
    expect(json(out).map(({ file }) => file)).toEqual([path.join('measurements', 'a.jdx'), path.join('measurements', 'b.jdx')]);
  });

  test('an empty folder is no success', async () => {
    const { code, out } = await culet('read', 'empty', '--json');
    expect(code).toBe(1);
    expect(json(out)).toMatchObject([{ file: 'empty', ok: false, error: { code: 'empty-folder' } }]);
  });

  test('- is standard input', async () => {
    const { code, out } = await runCaptured(['read', '-', '--json'], { stdin: Buffer.from(jcamp('Piped')) });
    expect(code).toBe(0);
    expect(json(out)).toMatchObject([{ file: '-', ok: true, blocks: [{ title: 'Piped' }] }]);
  });

  test('says in words what is in a file', async () => {
    const { code, out } = await culet('read', 'ir.jdx');
    expect(code).toBe(0);
    expect(out).toContain('JCAMP-DX, 1 curve');
    expect(out).toContain('Invented stone: 5 points, 4000 to 3000 cm-1, absorbance 0.5 to 2.5');
  });

  test('a stated unit is used where the file has none and only then', async () => {
    expect(json((await culet('read', 'pl.txt', '--x-unit', 'nm', '--json')).out)).toMatchObject([{ blocks: [{ xUnit: 'nm' }] }]);
    const contradicted = json((await culet('read', 'ir.jdx', '--x-unit', 'nm', '--json')).out)[0]!;
    expect(contradicted['blocks']).toMatchObject([{ xUnit: 'cm-1' }]);
    expect(contradicted['warnings']).toContainEqual({ code: 'unit-not-used', message: 'The file itself says the axis is in cm⁻¹; the stated nm was not used.' });
  });
});

describe('analyse', () => {
  const method = ['--method', 'photoluminescence', '--laser-nm', '532', '--json'];

  test('finds the silicon-vacancy line and the diamond line', async () => {
    const { code, out } = await culet('analyse', 'pl-nm.txt', ...method);
    expect(code).toBe(0);
    const [entry] = json(out) as (Entry & { peaks: { position: number; unit: string; centre: string | null }[]; diamondRaman: object; findings: object[] })[];
    expect(entry).toMatchObject({ file: 'pl-nm.txt', ok: true, diamondRaman: { present: true, expectedNm: expect.closeTo(572.6, 0) as number } });
    const silicon = entry!.peaks.find((peak) => Math.abs(peak.position - 736.8) < 0.3);
    expect(silicon).toMatchObject({ unit: 'nm', centre: 'SIV' });
    for (const field of ['position', 'unit', 'height', 'fwhm', 'prominence', 'snr', 'centre', 'offset']) expect(silicon).toHaveProperty(field);
    for (const finding of entry!.findings) expect(finding).toMatchObject({ code: expect.any(String) as string, statement: expect.any(String) as string, strength: expect.any(String) as string, method: 'photoluminescence' });
    expect(entry).not.toHaveProperty('blocks');
  });

  test('a unit stated in ångström gives the same line', async () => {
    const { out } = await culet('analyse', 'pl-angstrom.txt', '--x-unit', 'angstrom', ...method);
    const [entry] = json(out) as (Entry & { peaks: { position: number }[] })[];
    expect(entry!.peaks.some((peak) => Math.abs(peak.position - 736.8) < 0.3)).toBe(true);
  });

  test('without any unit it says which option states it', async () => {
    const { code, out } = await culet('analyse', 'pl.txt', ...method);
    expect(code).toBe(1);
    expect(json(out)).toMatchObject([{ file: 'pl.txt', ok: false, error: { code: 'axis-unit-missing', message: expect.stringContaining('--x-unit nm|nm-vacuum|angstrom|cm-1|ev|raman-shift') as string } }]);
  });

  test('a file of two curves gives one entry that lists both', async () => {
    const { out } = await culet('analyse', 'two.jdx', '--method', 'infrared', '--json');
    expect(json(out)).toHaveLength(1);
    expect(json(out)[0]!['blocks']).toMatchObject([{ block: 0, title: 'First' }, { block: 1, title: 'Second' }]);
  });

  test('says in words what follows', async () => {
    const { code, out } = await culet('analyse', 'pl-nm.txt', '--method', 'photoluminescence', '--laser-nm', '532');
    expect(code).toBe(0);
    expect(out).toMatch(/Diamond line present, expected at 572\.\d\d nm/);
    expect(out).toMatch(/736\.\d\d nm +\d/);
  });

  test('every number is finite or null', async () => {
    const { out } = await culet('analyse', 'pl-nm.txt', ...method);
    expect(out).not.toMatch(/NaN|Infinity/);
  });
});

describe('wrong command lines', () => {
  test.each([
    [['read'], /Missing required argument 'file'/],
    [['read', 'ir.jdx', '--jsn'], /Unknown option '--jsn'\. Did you mean --json\?/],
    [['raed', 'ir.jdx'], /Unknown command 'raed'\. Did you mean read\?/],
    [['analyse', 'pl.txt'], /Required option '--method <method>' not specified/],
    [['analyse', 'pl.txt', '--method', 'xray'], /Allowed choices are photoluminescence, raman, absorption, infrared, ultraviolet-transmission\./],
    [['analyse', 'pl.txt', '--method', 'raman', '--laser-nm', 'green'], /It must be a number from 200 to 1100 nanometres\./],
    [['analyse', 'pl.txt', '--method', 'raman', '--temperature-k', '0'], /It must be a number from 4 to 400 kelvin\./],
    [['analyse', 'pl.txt', '--method', 'raman', '--x-unit', 'furlong'], /Allowed choices are nm, nm-vacuum, angstrom, cm-1, ev, raman-shift\./],
    [['serve', '--port', '70000'], /whole number from 0 to 65535/],
    [['report', 'C-2026-0001'], /Required option '--out <file>' not specified/],
    [[], /Say what to do/],
  ])('%j: one sentence and exit code 2', async (args, sentence) => {
    const { code, out, err } = await culet(...args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err.trimEnd().split('\n')).toHaveLength(1);
    expect(err).toMatch(sentence);
    expect(err).not.toMatch(/^error/i);
  });
});

describe('help and version', () => {
  test.each([['--help'], ['read --help'], ['analyse --help'], ['report --help'], ['verify --help'], ['bundle --help'], ['serve --help'], ['demo --help']])('culet %s shows an example', async (line) => {
    const { code, out, err } = await culet(...line.split(' '));
    expect(code).toBe(0);
    expect(err).toBe('');
    expect(out).toMatch(/Examples?:\n {2}culet /);
  });

  test('--version is one line', async () => {
    const { code, out } = await culet('--version');
    expect(code).toBe(0);
    expect(out).toMatch(/^\S+\n$/);
  });
});
