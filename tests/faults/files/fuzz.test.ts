import { expect, test } from 'vitest';
import { readSpectrumFile } from '../../../app/files/read-spectrum-file.ts';
import { bytesOf, jcamp, NTUPLES_FILE, rows } from '../../fixtures/files/made-files.ts';

/** Mulberry32: small, seeded, the same on every machine. */
function generator(seed: number): () => number {
  let a = seed;
  return () => {
    a = (a + 0x6d2b79f5) | 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const one = jcamp('0AJT%jX\n9c');
const FILES = [
  one,
  jcamp('0 1 2 3 3 2\n5 1 0 -1 -2 -3'),
  jcamp('0A00NOPQ\n4A26RJ0J1J2\n8A68J3J4J5\n11B10', { NPOINTS: '12', LASTX: '11', FIRSTY: '100' }),
  jcamp('0, 1\n2, 5\n7, 2', { LASTX: '7', NPOINTS: '3' }, 'XYPOINTS=(XY..XY)'),
  jcamp('(900, 1, <a, b>)\n(500, 7, <c>)', { NPOINTS: '2' }, 'PEAK ASSIGNMENTS=(XYA)'),
  `##TITLE=both\n##DATA TYPE=LINK\n##BLOCKS=2\n${one}${one}##END=\n`,
  NTUPLES_FILE,
  `Wave;Sample;Dark;Reflectance\n[nm];[counts];[counts];[%]\n${rows((i) => `${400 + i}.5;1;2;${i}.25`)}`,
  `# {"a": [1, 2]}\nX Units: nm\n${rows((i) => `${400 + i},5\t0,${i}`, 20, '\r\n')}>>>>>End\n`,
  rows((i) => `"${400 + i},5","0,${i}"`),
].map(bytesOf);
/** Bytes that matter to the formats, beside any others. */
const TELLING = bytesOf('#=$@%?+-.,;\t\r\n EeDdAJSZs09()<>"X\u0000');

function mutate(bytes: Uint8Array, random: () => number): Uint8Array {
  const at = (n: number): number => Math.floor(random() * n);
  const kind = at(4);
  if (kind === 0) return bytes.slice(0, at(bytes.length + 1));
  if (kind === 1) {
    const other = FILES[at(FILES.length)]!;
    return Uint8Array.from([...bytes.subarray(0, at(bytes.length)), ...other.subarray(at(other.length))]);
  }
  if (kind === 2) {
    const from = at(bytes.length);
    return Uint8Array.from([...bytes.subarray(0, from), ...bytes.subarray(Math.min(bytes.length, from + 1 + at(40)))]);
  }
  const copy = bytes.slice();
  for (let n = 1 + at(4); n > 0; n -= 1) copy[at(copy.length)] = random() < 0.7 ? TELLING[at(TELLING.length)]! : at(256);
  return copy;
}

test('2,500 damaged files: read completely or refused with a sentence, never thrown', () => {
  const random = generator(20260);
  let readable = 0;
  let refusals = 0;
  for (let k = 0; k < 2500; k += 1) {
    const bytes = mutate(FILES[k % FILES.length]!, random);
    const result = readSpectrumFile(`damaged ${k}`, bytes);
    if (!result.ok) {
      refusals += 1;
      expect(result.error.code).toMatch(/^[a-z][a-z-]+$/);
      expect(result.error.message.length).toBeGreaterThan(20);
      continue;
    }
    readable += 1;
    expect(result.value.blocks.length).toBeGreaterThan(0);
    for (const block of result.value.blocks) {
      const whole = block.x.length === block.y.length && block.x.length >= (block.peaksOnly ? 1 : 2) && block.x.every(Number.isFinite) && block.y.every(Number.isFinite);
      if (!whole) throw new Error(`damaged ${k} gave a block that is not whole:\n${new TextDecoder().decode(bytes)}`);
    }
  }
  // Both ways must really be taken, or the test shows nothing.
  expect(readable).toBeGreaterThan(300);
  expect(refusals).toBeGreaterThan(300);
});

test('random bytes never throw', () => {
  const random = generator(7);
  for (let k = 0; k < 500; k += 1) {
    const bytes = Uint8Array.from({ length: Math.floor(random() * 400) }, () => Math.floor(random() * 256));
    expect(typeof readSpectrumFile('noise', bytes).ok).toBe('boolean');
  }
});

test.each([' ', '"', 'a: ', '#', '- ', '1,', '('])('a line of a million %j does not hold the reader up', (piece) => {
  const start = performance.now();
  readSpectrumFile('long', bytesOf(`${piece.repeat(1_000_000 / piece.length)}\n1 2\n2 3\n`));
  expect(performance.now() - start).toBeLessThan(5000);
});
