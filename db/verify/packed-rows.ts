import { VOUCHED_TABLES } from '../ledger/vouched-tables.ts';

/**
 * Rows by key (“table/id”) and digest, in the order they were met: a million of them, and so as words instead of texts, which cross to
 * another thread or process as they stand. Plain data.
 */
export type PackedRows = {
  readonly count: number;
  /** Place of the table among those that are vouched for; ODD where the key stands in `odd`. */
  readonly tables: Uint8Array;
  /** The id, a UUID, as four words; nothing where the key is odd. */
  readonly ids: Uint32Array;
  /** The digest as eight words; zeros, which no row gives, where it is not written as a digest. */
  readonly digests: Uint32Array;
  /** Number of the row, or of the entry that vouches for it. */
  readonly numbers: Float64Array;
  /** Keys that have another form, in their order. */
  readonly odd: readonly string[];
};

export const ODD = 255;
export const ID_WORDS = 4;
export const DIGEST_WORDS = 8;
const ID_LENGTH = 36;
const DIGEST_LENGTH = 64;
/** Hexadecimal digits of a word. */
const DIGITS = 8;
const HYPHEN = 0x2d;
const AT_FIRST = 512;

/** Worth of a lower-case hexadecimal digit by its character code; above 15 for anything else. */
const WORTH = new Uint8Array(65_536).fill(0xff);
for (const [worth, digit] of [...'0123456789abcdef'].entries()) WORTH[digit.charCodeAt(0)] = worth;

const placeOfTable = new Map(VOUCHED_TABLES.map(({ table }, place) => [table, place]));

/** `half` digits at `a` and as many at `b`, as one word; -1 where any is none. */
function word(text: string, a: number, b: number): number {
  let all = 0;
  let value = 0;
  for (let i = 0; i < DIGITS / 2; i++) {
    const worth = WORTH[text.charCodeAt(a + i)]!;
    all |= worth;
    value = (value << 4) | worth;
  }
  for (let i = 0; i < DIGITS / 2; i++) {
    const worth = WORTH[text.charCodeAt(b + i)]!;
    all |= worth;
    value = (value << 4) | worth;
  }
  return all > 0xf ? -1 : value >>> 0;
}

/** Puts the digest into `words` from `to` on; zeros where the text is none. */
function putDigest(text: string, words: Uint32Array, to: number): void {
  let fits = text.length === DIGEST_LENGTH;
  for (let i = 0; i < DIGEST_WORDS && fits; i++) {
    const value = word(text, DIGITS * i, DIGITS * i + DIGITS / 2);
    fits = value >= 0;
    words[to + i] = value;
  }
  if (!fits) words.fill(0, to, to + DIGEST_WORDS);
}

/** Puts the UUID that begins at `from` and ends with the text into `words`; false where it is none in its usual form. */
function putId(text: string, from: number, words: Uint32Array, to: number): boolean {
  if (text.length - from !== ID_LENGTH) return false;
  for (const place of [8, 13, 18, 23]) if (text.charCodeAt(from + place) !== HYPHEN) return false;
  const a = word(text, from, from + 4), b = word(text, from + 9, from + 14), c = word(text, from + 19, from + 24), d = word(text, from + 28, from + 32);
  if (a < 0 || b < 0 || c < 0 || d < 0) return false;
  words[to] = a;
  words[to + 1] = b;
  words[to + 2] = c;
  words[to + 3] = d;
  return true;
}

const hex = (value: number): string => value.toString(16).padStart(DIGITS, '0');

/** The key as it was, of one that is not odd. */
export function keyOf(table: number, ids: Uint32Array, at: number): string {
  const digits = hex(ids[at]!) + hex(ids[at + 1]!) + hex(ids[at + 2]!) + hex(ids[at + 3]!);
  return `${VOUCHED_TABLES[table]!.table}/${digits.slice(0, 8)}-${digits.slice(8, 12)}-${digits.slice(12, 16)}-${digits.slice(16, 20)}-${digits.slice(20)}`;
}

/** The same list with room for as much again. */
export function doubled<A extends Uint8Array | Uint32Array | Float64Array>(list: A): A {
  const fresh = new (list.constructor as new (length: number) => A)(2 * list.length);
  fresh.set(list);
  return fresh;
}

export class RowPacker {
  #count = 0;
  #tables = new Uint8Array(AT_FIRST);
  #ids = new Uint32Array(AT_FIRST * ID_WORDS);
  #digests = new Uint32Array(AT_FIRST * DIGEST_WORDS);
  #numbers = new Float64Array(AT_FIRST);
  readonly #odd: string[] = [];

  /** `digest` may be anything that stood in the place of one. */
  add(key: string, digest: unknown, number: number): void {
    const at = this.#count;
    if (at === this.#tables.length) this.#grow();
    const slash = key.indexOf('/');
    const table = placeOfTable.get(key.slice(0, slash));
    const usual = table !== undefined && putId(key, slash + 1, this.#ids, ID_WORDS * at);
    this.#tables[at] = usual ? table : ODD;
    if (!usual) this.#odd.push(key);
    putDigest(typeof digest === 'string' ? digest : '', this.#digests, DIGEST_WORDS * at);
    this.#numbers[at] = number;
    this.#count += 1;
  }

  #grow(): void {
    this.#tables = doubled(this.#tables);
    this.#ids = doubled(this.#ids);
    this.#digests = doubled(this.#digests);
    this.#numbers = doubled(this.#numbers);
  }

  packed(): PackedRows {
    const count = this.#count;
    return {
      count, tables: this.#tables.slice(0, count), ids: this.#ids.slice(0, ID_WORDS * count), digests: this.#digests.slice(0, DIGEST_WORDS * count),
      numbers: this.#numbers.slice(0, count), odd: this.#odd,
    };
  }
}
