import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../../app/spectra/simulate/seeded-random.ts';
import { VOUCHED_TABLES } from '../../../../db/ledger/vouched-tables.ts';
import { keyOf, ID_WORDS, ODD, RowPacker, type PackedRows } from '../../../../db/verify/packed-rows.ts';
import { RowVouchers } from '../../../../db/verify/row-vouchers.ts';

const random = seededRandom(7);
const pick = <T>(list: readonly T[]): T => list[random.below(list.length)]!;
const sha = (text: string): string => createHash('sha256').update(text).digest('hex');
const uuid = (n: number): string => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`;

/** Keys as they stand in ledgers, and such as somebody might have put there. */
function someKey(): string {
  const table = pick(VOUCHED_TABLES).table;
  return pick([
    `${table}/${uuid(random.below(400))}`, `${table}/${uuid(random.below(400))}`, `${table}/${uuid(random.below(400))}`, `${table}/${random.below(50)}`,
    `${table}/${uuid(random.below(50)).replace('-7', '-A')}`, `${table}/${uuid(5).toUpperCase()}x`, `${table}/01900000x0000-7000-8000-000000000005`, `${table}/01900000-0000-7000-8000-00000000000g`,
    `${table}/01900000-0000-7000-8000-0000000000Ā0`, `${table}//`, `other/${uuid(3)}`, uuid(3), '', '/', table,
  ]);
}

function packed(rows: readonly (readonly [string, unknown, number])[]): PackedRows {
  const packer = new RowPacker();
  for (const [key, digest, number] of rows) packer.add(key, digest, number);
  return packer.packed();
}

/** Keys as they come out again. */
function keysOf(rows: PackedRows): string[] {
  let odd = 0;
  return Array.from({ length: rows.count }, (_, i) => (rows.tables[i] === ODD ? rows.odd[odd++]! : keyOf(rows.tables[i]!, rows.ids, ID_WORDS * i)));
}

describe('rows that are packed', () => {
  test('come out with the keys that went in, whatever their form', () => {
    const keys = Array.from({ length: 5000 }, someKey);
    expect(keysOf(packed(keys.map((key, i) => [key, sha(key), i])))).toEqual(keys);
  });

  test('a usual key takes no text', () => {
    for (const { table } of VOUCHED_TABLES) expect(packed([[`${table}/${uuid(12)}`, sha('x'), 1]]).odd).toEqual([]);
  });

  test('fit their voucher only where the digests are equal to the last digit', () => {
    const key = `person/${uuid(1)}`;
    const digest = sha('x');
    const vouchers = new RowVouchers();
    vouchers.note(packed([[key, digest, 1]]));
    const fits = (other: unknown): boolean => vouchers.fits(0, packed([[key, other, 1]]), 0);
    expect(fits(digest)).toBe(true);
    for (let i = 0; i < digest.length; i++) expect(fits(digest.slice(0, i) + (digest[i] === '0' ? '1' : '0') + digest.slice(i + 1))).toBe(false);
  });

  test.each([['upper case', sha('x').toUpperCase()], ['too short', sha('x').slice(1)], ['too long', `${sha('x')}0`], ['no hexadecimal', sha('x').replace(/.$/, 'g')], ['a number', 5], ['nothing', null], ['empty', '']])('no row fits a voucher that is %s', (_what, digest) => {
    const vouchers = new RowVouchers();
    vouchers.note(packed([[`person/${uuid(1)}`, digest, 1]]));
    expect(vouchers.fits(0, packed([[`person/${uuid(1)}`, sha('x'), 1]]), 0)).toBe(false);
  });
});

test('vouchers are found as in a map of texts: the last one counts, places are in the order of the first', () => {
  const all = Array.from({ length: 20_000 }, (_, i): [string, string, number] => [someKey(), sha(String(random.below(9))), i]);
  const vouchers = new RowVouchers();
  for (let i = 0; i < all.length; i += 700) vouchers.note(packed(all.slice(i, i + 700)));
  const expected = new Map<string, [string, number]>();
  for (const [key, digest, seq] of all) expected.set(key, [digest, seq]);
  expect([...vouchers.keys()]).toEqual([...expected.keys()]);
  expect(vouchers.size).toBe(expected.size);
  [...expected].forEach(([key, [digest, seq]], place) => {
    const row = packed([[key, digest, 0]]);
    const odd = row.odd[0] ?? null;
    expect([vouchers.placeOf(row, 0, odd), vouchers.seqAt(place), vouchers.fits(place, row, 0)]).toEqual([place, seq, true]);
  });
  for (const key of [`person/${uuid(9999)}`, 'person/none', 'none']) expect(vouchers.placeOf(packed([[key, sha('x'), 0]]), 0, packed([[key, '', 0]]).odd[0] ?? null)).toBe(-1);
});
