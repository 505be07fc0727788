import { GENESIS, hashedText, sha256Hex, type AuditStatement, type CustodyStatement } from './chain.ts';
import { EntryReader } from './entry-reader.ts';

/** An entry as it is kept: `content` is the canonical JSON that was hashed. */
export type KeptEntry = {
  readonly content: string; readonly previous: string; readonly hash: string;
  readonly statement: Omit<CustodyStatement, 'content'> | Omit<AuditStatement, 'content'>;
};

export type ChainFault = {
  /** gap: a number is missing · order: numbers don't rise · previous: doesn't follow on the entry before · content: was changed after writing · cut: the end is missing */
  readonly kind: 'gap' | 'order' | 'previous' | 'content' | 'cut';
  readonly seq: number;
  /** Sentence for a person, without the name of the ledger. */
  readonly sentence: string;
};

/** Where checking a chain stands: it can be done in slices. */
export type ChainState = { readonly checked: number; readonly lastSeq: number; readonly head: string; readonly fault: ChainFault | null };

export const CHAIN_START: ChainState = { checked: 0, lastSeq: 0, head: GENESIS, fault: null };

/** SHA-256 of UTF-8 text as 64 lower-case hexadecimal digits: a machine's own is faster than one written in this language. */
export type Sha256 = (text: string) => string;

/** Told of every entry whose content can be read, before it is known to fit. The content is to be had only until the next entry is read. */
export type EachContent = (entry: KeptEntry, content: EntryReader) => void;

function contentFits(entry: KeptEntry, reader: EntryReader, sha256: Sha256, each: EachContent): boolean {
  if (!reader.read(entry.content)) return false;
  each(entry, reader);
  try {
    return reader.isCanonical() && sha256(hashedText(entry.previous, entry.statement, entry.content)) === entry.hash;
  } catch {
    return false;
  }
}

function fault(state: ChainState, entry: KeptEntry, reader: EntryReader, sha256: Sha256, each: EachContent): ChainFault | null {
  const seq = entry.statement.seq;
  const expected = state.lastSeq + 1;
  if (seq < expected) return { kind: 'order', seq, sentence: `Entry ${seq} stands after entry ${state.lastSeq}: the order was changed.` };
  if (seq > expected) {
    const missing = seq - 1 === expected ? `Entry ${expected} is missing` : `Entries ${expected} to ${seq - 1} are missing`;
    return { kind: 'gap', seq: expected, sentence: `${missing}: entry ${seq} follows on entry ${state.lastSeq}.` };
  }
  // Content before link: an entry that was altered is named itself, not the one after it.
  if (!contentFits(entry, reader, sha256, each)) {
    return { kind: 'content', seq, sentence: `Entry ${seq} was changed after it was written: its content no longer gives its digest.` };
  }
  if (entry.previous !== state.head) {
    return { kind: 'previous', seq, sentence: `Entry ${seq} does not follow on the entry before it: one of the two was replaced.` };
  }
  return null;
}

/**
 * Checks the next entries of a chain, in the order of their numbers, from where `state` stands.
 * Stops at the first that does not fit and names it; entries after it are not counted.
 */
export function verifyChain(entries: Iterable<KeptEntry>, state: ChainState = CHAIN_START, sha256: Sha256 = sha256Hex, each: EachContent = () => {}): ChainState {
  const reader = new EntryReader();
  let now = state;
  for (const entry of entries) {
    if (now.fault) return now;
    const found = fault(now, entry, reader, sha256, each);
    if (found) return { ...now, fault: found };
    now = { checked: now.checked + 1, lastSeq: entry.statement.seq, head: entry.hash, fault: null };
  }
  return now;
}

/** Says so where the last number ever given out is higher than the last entry that is there. */
export function verifyEnd(state: ChainState, lastGiven: number): ChainState {
  if (state.fault || lastGiven <= state.lastSeq) return state;
  const missing = lastGiven === state.lastSeq + 1 ? `Entry ${lastGiven} was` : `Entries ${state.lastSeq + 1} to ${lastGiven} were`;
  return { ...state, fault: { kind: 'cut', seq: state.lastSeq + 1, sentence: `${missing} written once and removed from the end.` } };
}
