/** What the audit ledger vouches for of rows, by "table/id": a million of them, and so in lists instead of an object for each. */
export class RowVouchers {
  readonly #places = new Map<string, number>();
  readonly #digests: string[] = [];
  readonly #seqs: number[] = [];

  get size(): number { return this.#digests.length; }

  /** A later entry counts instead of an earlier one. */
  note(key: string, digest: string, seq: number): void {
    const place = this.#places.get(key) ?? this.#digests.length;
    if (place === this.#digests.length) this.#places.set(key, place);
    this.#digests[place] = digest;
    this.#seqs[place] = seq;
  }

  /** Where the voucher of a row stands, below `size`, or undefined where no entry names it. */
  placeOf(key: string): number | undefined { return this.#places.get(key); }

  digestAt(place: number): string { return this.#digests[place]!; }

  /** Entry of the audit ledger that says so. */
  seqAt(place: number): number { return this.#seqs[place]!; }

  /** Keys in the order of their places. */
  keys(): Iterable<string> { return this.#places.keys(); }
}
