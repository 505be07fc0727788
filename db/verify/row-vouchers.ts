import { DIGEST_WORDS, doubled, ID_WORDS, keyOf, ODD, type PackedRows } from './packed-rows.ts';

const AT_FIRST = 1024;

/** Spreads ids over the table: those given out one after the other differ in a few digits only. */
function spread(table: number, ids: Uint32Array, at: number): number {
  let h = table;
  for (let i = 0; i < ID_WORDS; i++) {
    h = Math.imul(h ^ ids[at + i]!, 0x9e3779b1);
    h ^= h >>> 15;
  }
  h = Math.imul(h, 0x85ebca6b);
  return (h ^ (h >>> 13)) >>> 0;
}

/** What the audit ledger vouches for of rows, by key: a million of them, and so in flat lists with a table of places over them. */
export class RowVouchers {
  #size = 0;
  /** Place + 1 at each slot, 0 where it is free; twice as many slots as places at least. */
  #slots = new Int32Array(2 * AT_FIRST);
  #tables = new Uint8Array(AT_FIRST);
  #ids = new Uint32Array(AT_FIRST * ID_WORDS);
  #digests = new Uint32Array(AT_FIRST * DIGEST_WORDS);
  #seqs = new Float64Array(AT_FIRST);
  readonly #odd = new Map<string, number>();

  get size(): number { return this.#size; }

  /** Takes over what a piece of the ledger vouches for. A later entry counts instead of an earlier one. */
  note(rows: PackedRows): void {
    let odd = 0;
    for (let i = 0; i < rows.count; i++) {
      const key = rows.tables[i] === ODD ? rows.odd[odd++]! : null;
      const place = this.#placeFor(rows, i, key);
      for (let w = 0; w < DIGEST_WORDS; w++) this.#digests[DIGEST_WORDS * place + w] = rows.digests[DIGEST_WORDS * i + w]!;
      this.#seqs[place] = rows.numbers[i]!;
    }
  }

  /** Where the voucher of a row stands, below `size`, or -1 where no entry names it. `key`: of an odd one. */
  placeOf(rows: PackedRows, i: number, key: string | null): number {
    return key !== null ? this.#odd.get(key) ?? -1 : this.#slots[this.#slot(rows.tables[i]!, rows.ids, ID_WORDS * i)]! - 1;
  }

  /** Whether the row has the digest that is vouched for at `place`. */
  fits(place: number, rows: PackedRows, i: number): boolean {
    for (let w = 0; w < DIGEST_WORDS; w++) if (this.#digests[DIGEST_WORDS * place + w] !== rows.digests[DIGEST_WORDS * i + w]) return false;
    return true;
  }

  /** Entry of the audit ledger that says so. */
  seqAt(place: number): number { return this.#seqs[place]!; }

  /** Keys in the order of their places. */
  * keys(): Generator<string, void, undefined> {
    const odd = this.#odd.keys();
    for (let place = 0; place < this.#size; place++) yield this.#tables[place] === ODD ? odd.next().value! : keyOf(this.#tables[place]!, this.#ids, ID_WORDS * place);
  }

  /** The slot of the key, or the free one where it would stand. */
  #slot(table: number, ids: Uint32Array, at: number): number {
    const slots = this.#slots;
    const last = slots.length - 1;
    for (let slot = spread(table, ids, at) & last; ; slot = (slot + 1) & last) {
      const place = slots[slot]! - 1;
      if (place < 0) return slot;
      const own = ID_WORDS * place;
      const mine = this.#ids;
      if (mine[own] === ids[at] && mine[own + 1] === ids[at + 1] && mine[own + 2] === ids[at + 2] && mine[own + 3] === ids[at + 3] && this.#tables[place] === table) return slot;
    }
  }

  #placeFor(rows: PackedRows, i: number, key: string | null): number {
    const known = this.placeOf(rows, i, key);
    if (known >= 0) return known;
    if (this.#size === this.#tables.length) this.#grow();
    const place = this.#size;
    this.#size += 1;
    this.#tables[place] = rows.tables[i]!;
    if (key !== null) {
      this.#odd.set(key, place);
      return place;
    }
    for (let w = 0; w < ID_WORDS; w++) this.#ids[ID_WORDS * place + w] = rows.ids[ID_WORDS * i + w]!;
    this.#slots[this.#slot(rows.tables[i]!, rows.ids, ID_WORDS * i)] = place + 1;
    return place;
  }

  #grow(): void {
    this.#tables = doubled(this.#tables);
    this.#ids = doubled(this.#ids);
    this.#digests = doubled(this.#digests);
    this.#seqs = doubled(this.#seqs);
    this.#slots = new Int32Array(2 * this.#slots.length);
    for (let place = 0; place < this.#size; place++) {
      if (this.#tables[place] !== ODD) this.#slots[this.#slot(this.#tables[place]!, this.#ids, ID_WORDS * place)] = place + 1;
    }
  }
}
