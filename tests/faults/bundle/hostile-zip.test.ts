import { createHash } from 'node:crypto';
import { deflateSync } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { judgeBundle } from '../../../app/bundle/judge-bundle.ts';
import { readSeal, writeSeal } from '../../../app/bundle/seal.ts';
import { directoryOf, localHeader, MAX_MEMBERS, type ZipMember } from '../../../app/bundle/zip-form.ts';
import { crc32 } from '../../../app/custody/crc32.ts';
import { bytesSource } from '../../../main/bundle/byte-source.ts';
import { checkBundle } from '../../../main/bundle/check-bundle.ts';
import { readArchive } from '../../../main/bundle/read-archive.ts';
import { readMember } from '../../../main/bundle/read-member.ts';
import { smallBundle } from './small-bundle.ts';

type Made = { name: string; bytes: Uint8Array; change?: Partial<ZipMember> };

/** An archive as this program writes it, with headers that lie where `change` says so. */
function archiveOf(files: readonly Made[], alter: (whole: Uint8Array, directoryAt: number) => Uint8Array = (whole) => whole): Uint8Array {
  const members: ZipMember[] = [];
  const parts: Uint8Array[] = [];
  let at = 0;
  for (const { name, bytes, change } of files) {
    const member: ZipMember = { name, packed: bytes.byteLength, size: bytes.byteLength, crc: crc32(bytes), deflated: false, modified: 0x5b7a0000, at, ...change };
    members.push(member);
    parts.push(localHeader(member), bytes);
    at += parts.at(-2)!.byteLength + bytes.byteLength;
  }
  return alter(Buffer.concat([...parts, directoryOf(members, at)]), at);
}

const readme = { name: 'README.txt', bytes: strToU8('Culet bundle\n') };
const check = (bytes: Uint8Array) => judgeBundle(checkBundle(bytesSource(bytes)), []);
const codeOf = (bytes: Uint8Array): string => {
  const read = readArchive(bytesSource(bytes));
  return read.ok ? 'none' : read.error.code;
};
const le = (whole: Uint8Array): DataView => new DataView(whole.buffer, whole.byteOffset, whole.byteLength);

describe('a zip that means harm is refused with its reason, before anything is unpacked', () => {
  test.each([
    '../out.txt', 'cases/../../out.txt', '/etc/passwd', 'C:/windows.txt', 'c:evil.txt', '..\\out.txt', 'a\\b.txt', 'a//b.txt', './a.txt', 'a/', 'bad\u0000name', 'gpj.\u202Efdp', `${'x'.repeat(241)}`, 'a?b', '',
  ])('the name %j', (name) => {
    const bytes = archiveOf([readme, { name, bytes: strToU8('x') }]);
    expect(codeOf(bytes)).toBe('unsafe-name');
    expect(check(bytes)).toMatchObject({ verdict: 'altered', faults: [{ code: 'unsafe-name', sentence: expect.stringMatching(/^[^\u0000-\u001f\u202e]+$/) as string }] });
  });

  test.each<[string, string, () => Uint8Array]>([
    ['two files of one name', 'duplicate-name', () => archiveOf([readme, readme])],
    ['two names that differ in case alone', 'duplicate-name', () => archiveOf([readme, { ...readme, name: 'readme.TXT' }])],
    ['a symbolic link', 'link', () => archiveOf([readme], (whole, at) => { le(whole).setUint32(at + 38, 0o120777 * 0x10000, true); return whole; })],
    ['an encrypted file', 'encrypted', () => archiveOf([readme], (whole) => { le(whole).setUint16(6, 0x0801, true); return whole; })],
    ['a file that only the directory calls encrypted', 'encrypted', () => archiveOf([readme], (whole, at) => { le(whole).setUint16(at + 8, 0x0801, true); return whole; })],
    ['a method of packing that nobody asked for', 'unsupported', () => archiveOf([readme], (whole) => { le(whole).setUint16(8, 12, true); return whole; })],
    ['sizes that come after the bytes', 'unsupported', () => archiveOf([readme], (whole) => { le(whole).setUint16(6, 0x0808, true); return whole; })],
    ['extra fields', 'unsupported', () => archiveOf([readme], (whole) => { le(whole).setUint16(28, 4, true); return whole; })],
    ['a size far larger than its bytes can hold', 'too-large', () => archiveOf([readme, { name: 'b', bytes: new Uint8Array(10), change: { deflated: true, size: 400 * 1024 ** 2 } }])],
    ['a size beyond any record', 'too-large', () => archiveOf([readme, { name: 'b', bytes: new Uint8Array(10), change: { size: 0xffff_fff0 } }])],
    ['two sizes that contradict each other', 'headers-differ', () => archiveOf([readme, { name: 'b', bytes: new Uint8Array(10), change: { size: 11 } }])],
    ['a directory that names another file than stands there', 'headers-differ', () => archiveOf([readme], (whole, at) => { whole[at + 46] = 'X'.charCodeAt(0); return whole; })],
    ['a directory that points elsewhere', 'headers-differ', () => archiveOf([readme], (whole, at) => { le(whole).setUint32(at + 42, 1, true); return whole; })],
    ['bytes before the archive', 'foreign-bytes', () => Buffer.concat([strToU8('#!/bin/sh\n'), archiveOf([readme])])],
    ['bytes after the archive', 'foreign-bytes', () => Buffer.concat([archiveOf([readme]), strToU8('more')])],
    ['bytes between the files and the directory', 'foreign-bytes', () => archiveOf([readme], (whole, at) => Buffer.concat([whole.subarray(0, at), strToU8('hidden'), whole.subarray(at)]))],
    ['an end that is missing', 'cut-off', () => archiveOf([readme]).subarray(0, -5)],
    ['a file that is cut off', 'cut-off', () => archiveOf([readme]).subarray(0, 45)],
    ['nothing at all', 'cut-off', () => new Uint8Array(0)],
  ])('%s', (_what, code, make) => {
    const bytes = make();
    expect(codeOf(bytes)).toBe(code);
    const { verdict, faults } = check(bytes);
    expect(['altered', 'not-a-bundle']).toContain(verdict);
    expect(faults[0]!.sentence).toMatch(/\.$/);
  });

  test('too many files', () => {
    const files = Array.from({ length: MAX_MEMBERS + 1 }, (_, i) => ({ name: `f${i}`, bytes: new Uint8Array(0) }));
    expect(codeOf(archiveOf(files))).toBe('too-many');
  });

  test('a bomb stops at the size that it states, whatever it would go on to make', () => {
    const packed = new Uint8Array(deflateSync(new Uint8Array(300 * 1024 ** 2)).subarray(2, -4));
    const bytes = archiveOf([readme, { name: 'bomb.bin', bytes: packed, change: { deflated: true, size: 1_000_000 } }]);
    const archive = readArchive(bytesSource(bytes));
    let taken = 0;
    const read = archive.ok ? readMember(bytesSource(bytes), archive.value.members[1]!, (piece) => { taken += piece.byteLength; }) : archive;
    expect(read).toMatchObject({ ok: false, error: { code: 'bad-content', path: 'bomb.bin' } });
    expect(taken).toBeLessThanOrEqual(1_000_000);
  });

  test('packed bytes that are no deflate, or another file’s', () => {
    const junk = createHash('sha512').update('junk').digest();
    for (const change of [{ deflated: true, size: 100 }, { crc: 1 }]) {
      const bytes = archiveOf([readme, { name: 'b', bytes: junk, change }]);
      expect(check(bytes).faults.some(({ code, path }) => code === 'bad-content' && path === 'b')).toBe(true);
    }
  });

  test('a zip of another program is not a bundle, and neither is no zip', () => {
    expect(check(zipSync({ 'a.txt': strToU8('a') })).verdict).toBe('not-a-bundle');
    expect(check(strToU8('%PDF-1.7 no zip')).verdict).toBe('not-a-bundle');
    expect(check(archiveOf([{ name: 'other.txt', bytes: strToU8('x') }], (whole) => { whole[whole.byteLength - 1] = 0x20; return whole; })).verdict).toBe('not-a-bundle');
  });
});

describe('a sound bundle of which whole files were exchanged', () => {
  let zip: Uint8Array<ArrayBuffer>;
  let files: Made[] = [];
  beforeAll(async () => {
    zip = await smallBundle();
    const archive = readArchive(bytesSource(zip));
    files = (archive.ok ? archive.value.members : []).map((member) => {
      const pieces: Uint8Array[] = [];
      readMember(bytesSource(zip), member, (piece) => { pieces.push(piece.slice()); });
      return { name: member.name, bytes: Buffer.concat(pieces) };
    });
  }, 60_000);
  const faultsWith = (changed: readonly Made[]) => check(archiveOf(changed)).faults.map(({ code, path }) => `${code} ${path}`);
  const replaced = (name: string, change: (bytes: Uint8Array) => Uint8Array) => files.map((file) => (file.name === name ? { name, bytes: change(file.bytes) } : file));

  test('one that was only packed anew is said to be so', () => {
    expect(check(archiveOf(files))).toMatchObject({ verdict: 'altered', faults: [{ code: 'frame' }] });
  });

  test.each([
    ['README.txt', 'altered-file'], ['schemas/culet-case-1.schema.json', 'altered-file'], ['ledger/custody-chain-0001.txt', 'altered-file'], ['SHA256SUMS', 'altered-file'], ['seal.txt', 'seal'],
  ])('%s', (name, code) => {
    expect(faultsWith(replaced(name, (bytes) => Buffer.concat([bytes, strToU8('\n')])))).toContain(`${code} ${name}`);
  });

  test('a file that was added, and one that was taken out', () => {
    expect(faultsWith([...files.slice(0, -3), { name: 'extra.txt', bytes: strToU8('x') }, ...files.slice(-3)])).toContain('added-file extra.txt');
    expect(faultsWith(files.filter(({ name }) => name !== 'README.txt'))).toContain('missing-file README.txt');
    expect(faultsWith(files.filter(({ name }) => name !== 'manifest.json'))).toContain('manifest manifest.json');
    expect(faultsWith(files.filter(({ name }) => !name.endsWith('case.json'))).some((fault) => fault.startsWith('missing-file cases/'))).toBe(true);
  });

  /** All digests written anew, as somebody without the key could: manifest and an unsigned seal that fit. */
  function resealed(changed: readonly Made[]): Uint8Array {
    const digest = (bytes: Uint8Array) => ({ bytes: bytes.byteLength, sha256: createHash('sha256').update(bytes).digest('hex') });
    const others = changed.filter(({ name }) => name !== 'manifest.json' && name !== 'seal.txt');
    const said = JSON.parse(Buffer.from(changed.find(({ name }) => name === 'manifest.json')!.bytes).toString()) as object;
    const manifest = { name: 'manifest.json', bytes: strToU8(JSON.stringify({ ...said, signed: false, unsignedBecause: 'locked', files: others.map(({ name, bytes }) => ({ path: name, ...digest(bytes) })) })) };
    const { statement } = readSeal(changed.find(({ name }) => name === 'seal.txt')!.bytes)!;
    const body = archiveOf([...others, manifest], (whole, at) => whole.subarray(0, at));
    return archiveOf([...others, manifest, { name: 'seal.txt', bytes: writeSeal({ statement: { ...statement, manifest: digest(manifest.bytes), body: digest(body) }, signed: null }) }]);
  }
  const edited = (name: string, edit: (document: { entries: { hash: string; statement: { at: string } }[]; reports: { pdfSha256: string }[] }) => void) => {
    const path = files.find((file) => file.name.endsWith(name))!.name;
    return check(resealed(replaced(path, (bytes) => {
      const document = JSON.parse(Buffer.from(bytes).toString()) as Parameters<typeof edit>[0];
      edit(document);
      return strToU8(JSON.stringify(document));
    })));
  };

  test('one whose digests were all written anew is unsigned at best', () => {
    expect(check(resealed(files))).toMatchObject({ verdict: 'unsigned', faults: [] });
  });

  test.each<[string, string, Parameters<typeof edited>[1], string, string]>([
    ['a digest of an entry', '/audit.json', ({ entries }) => { entries[2]!.hash = '0'.repeat(64); }, 'ledger', 'no longer gives its digest'],
    ['an instant in an entry', '/custody.json', ({ entries }) => { entries[1]!.statement.at = '2020-01-01T00:00:00.000Z'; }, 'ledger', 'no longer gives its digest'],
    ['two entries that changed places', '/custody.json', ({ entries }) => { entries.reverse(); }, 'ledger', 'out of its order'],
    ['the digest of a report', '/case.json', ({ reports }) => { reports[0]!.pdfSha256 = '0'.repeat(64); }, 'report', 'is not the report'],
  ])('even then the ledgers and the case tell of %s', (_what, name, edit, code, words) => {
    const { verdict, faults } = edited(name, edit);
    expect(verdict).toBe('altered');
    expect(faults[0]).toMatchObject({ code, sentence: expect.stringContaining(words) as string });
  });

  test('even then a chain of which a line is missing is told', () => {
    const short = check(resealed(replaced('ledger/audit-chain-0001.txt', (bytes) => strToU8(Buffer.from(bytes).toString().split('\n').filter((_, i) => i !== 5).join('\n')))));
    expect(short.verdict).toBe('altered');
    expect(short.faults[0]).toMatchObject({ code: 'ledger', sentence: expect.stringContaining('without gaps') as string });
  });
});
