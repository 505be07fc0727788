import { canonicalMembers, stringsOf } from './canonical-members.ts';
import type { JsonValue } from './canonical-json.ts';
import { isCanonical } from './is-canonical.ts';

const pairsOf = (value: JsonValue | undefined): JsonValue[] => (value === null || typeof value !== 'object' ? [] : Object.entries(value).flat(1) as JsonValue[]);

/** Reads the contents of entries of a ledger one after the other: a million of them, and so without a new object for each. */
export class EntryReader {
  #text = '';
  #seen = false;
  /** Of the members, where `canonicalMembers` could see them: `#seen`. */
  readonly #spans: number[] = [];
  /** The parsed content, where it could not. */
  #value: JsonValue | null = null;

  /** Goes on to the next content. False where it is no JSON. */
  read(text: string): boolean {
    this.#text = text;
    this.#value = null;
    this.#seen = canonicalMembers(text, this.#spans);
    if (this.#seen) return true;
    try {
      this.#value = JSON.parse(text) as JsonValue;
      return true;
    } catch {
      return false;
    }
  }

  /** Whether the content is in its RFC 8785 form. Throws where it can't be written in one. */
  isCanonical(): boolean {
    return this.#seen || isCanonical(this.#text, this.#value);
  }

  /** Where the member stands among the spans, or -1. */
  #find(name: string): number {
    for (let i = 0; i < this.#spans.length; i += 3) {
      const start = this.#spans[i]!;
      if (this.#spans[i + 1]! - start === name.length && this.#text.startsWith(name, start)) return i;
    }
    return -1;
  }

  /** A member of the content, or undefined. */
  member(name: string): JsonValue | undefined {
    if (!this.#seen) {
      const value = this.#value as Readonly<Record<string, JsonValue | undefined>> | null;
      return value !== null && typeof value === 'object' && Object.hasOwn(value, name) ? value[name] : undefined;
    }
    const i = this.#find(name);
    return i < 0 ? undefined : JSON.parse(this.#text.slice(this.#spans[i + 1]! + 2, this.#spans[i + 2])) as JsonValue;
  }

  /** Names and values of a member that is an object, in turn; empty where there is none. */
  pairs(name: string): readonly JsonValue[] {
    if (!this.#seen) return pairsOf(this.member(name));
    const i = this.#find(name);
    return i < 0 ? [] : stringsOf(this.#text, this.#spans[i + 1]! + 2, this.#spans[i + 2]!) ?? pairsOf(this.member(name));
  }
}
