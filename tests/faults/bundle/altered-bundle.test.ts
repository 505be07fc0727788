import { beforeAll, describe, expect, test } from 'vitest';
import { judgeBundle } from '../../../app/bundle/judge-bundle.ts';
import { bytesSource } from '../../../main/bundle/byte-source.ts';
import { checkBundle } from '../../../main/bundle/check-bundle.ts';
import { dataAt, readArchive } from '../../../main/bundle/read-archive.ts';
import type { ZipMember } from '../../../app/bundle/zip-form.ts';
import { smallBundle } from './small-bundle.ts';

let zip: Uint8Array<ArrayBuffer>;
let members: readonly ZipMember[] = [];
let directoryAt = 0;
let key = '';

beforeAll(async () => {
  zip = await smallBundle();
  const archive = readArchive(bytesSource(zip));
  if (!archive.ok) throw new Error(archive.error.sentence);
  ({ members, directoryAt } = archive.value);
  const { publicKey } = checkBundle(bytesSource(zip));
  key = Buffer.from(publicKey ?? []).toString('hex');
}, 60_000);

const verdict = (bytes: Uint8Array) => judgeBundle(checkBundle(bytesSource(bytes)), [{ publicKey: key, whose: 'the house', own: true, distrust: '' }]);
const withFlip = (at: number, bit: number): Uint8Array => {
  const altered = zip.slice();
  altered[at]! ^= 1 << bit;
  return altered;
};

describe('a bundle in which one bit was turned over', () => {
  test('is authentic before', () => { expect(verdict(zip)).toMatchObject({ verdict: 'authentic', faults: [] }); });

  test('is noticed at every byte of the frame: headers of files, the seal, the directory, the end', () => {
    const [first, second] = [members[0]!, members[8]!];
    const seal = members.at(-1)!;
    const places = [
      ...Array.from({ length: dataAt(first) }, (_, i) => i),
      ...Array.from({ length: dataAt(second) - second.at }, (_, i) => second.at + i),
      ...Array.from({ length: dataAt(seal) - seal.at }, (_, i) => seal.at + i),
      ...Array.from({ length: Math.ceil(seal.packed / 5) }, (_, i) => dataAt(seal) + 5 * i),
      ...Array.from({ length: Math.ceil((zip.byteLength - directoryAt) / 11) }, (_, i) => directoryAt + 11 * i),
      ...Array.from({ length: 34 }, (_, i) => zip.byteLength - 1 - i),
    ];
    const missed = places.filter((at) => verdict(withFlip(at, at % 8)).verdict !== 'altered');
    expect(places.length).toBeGreaterThan(400);
    expect(missed).toEqual([]);
  }, 120_000);

  test('is noticed in the last byte of every file’s packed bytes, where inflating may not look, and in two hundred more', () => {
    const ends = members.filter(({ packed }) => packed > 0).map((member) => dataAt(member) + member.packed - 1);
    const spread = Array.from({ length: 200 }, (_, i) => Math.floor((i + 0.37) * directoryAt / 200));
    const missed = [...ends.flatMap((at) => [[at, 7], [at, 0]] as const), ...spread.map((at, i) => [at, i % 8] as const)].filter(([at, bit]) => verdict(withFlip(at, bit)).verdict !== 'altered');
    expect(missed).toEqual([]);
  }, 120_000);

  test('names the file that was altered, and what it is', () => {
    const report = members.find(({ name }) => name.endsWith('.pdf'))!;
    const { verdict: said, faults } = verdict(withFlip(dataAt(report) + 5000, 3));
    expect(said).toBe('altered');
    expect(faults[0]).toMatchObject({ code: 'bad-content', path: report.name });
    expect(faults[0]!.sentence).toContain(report.name);
  });

  test('says so where only the frame was altered and every file is as it was written', () => {
    const member = members[3]!;
    const { faults } = verdict(withFlip(member.at + 10, 2));
    expect(faults.map(({ code }) => code)).toEqual(['headers-differ']);
  });
});

describe('a bundle that is not whole', () => {
  test('is altered wherever it was cut off, with a sentence that says so', () => {
    for (let i = 1; i < 40; i += 1) {
      const cut = zip.subarray(0, Math.floor(zip.byteLength * i / 40));
      expect(verdict(cut)).toMatchObject({ verdict: 'altered', faults: [{ sentence: expect.any(String) as string }] });
    }
  });
});
