import { describe, expect, test } from 'vitest';
import { canonicalJson } from '../../../../app/custody/canonical-json.ts';
import { entryHash, GENESIS } from '../../../../app/custody/chain.ts';
import { CHAIN_START, verifyChain, verifyEnd, type KeptEntry } from '../../../../app/custody/verify-chain.ts';

function chain(length: number): KeptEntry[] {
  const entries: KeptEntry[] = [];
  let previous = GENESIS;
  for (let seq = 1; seq <= length; seq++) {
    const statement = { seq, at: `2026-03-02T09:00:0${seq}.000Z`, person: 'p', case: 'c', item: 'i' };
    const content = { event: 'moved', place: `shelf ${seq}` };
    const hash = entryHash(previous, { ...statement, content });
    entries.push({ statement, content: canonicalJson(content), previous, hash });
    previous = hash;
  }
  return entries;
}

const relinked = (entry: KeptEntry, previous: string): KeptEntry =>
  ({ ...entry, previous, hash: entryHash(previous, { ...entry.statement, content: JSON.parse(entry.content) as string } as Parameters<typeof entryHash>[1]) });

describe('verifyChain', () => {
  test('an untouched chain holds, in one go or in slices', () => {
    const entries = chain(6);
    const whole = verifyChain(entries);
    expect(whole).toEqual({ checked: 6, lastSeq: 6, head: entries[5]!.hash, fault: null });
    expect(verifyChain(entries.slice(4), verifyChain(entries.slice(0, 4)))).toEqual(whole);
  });
  test('an empty ledger holds', () => {
    expect(verifyChain([])).toEqual(CHAIN_START);
  });
  test.each([
    ['content', (e: KeptEntry): KeptEntry => ({ ...e, content: e.content.replace('shelf 3', 'shelf 9') })],
    ['content that is no JSON', (e: KeptEntry): KeptEntry => ({ ...e, content: '{' })],
    ['spacing of the content', (e: KeptEntry): KeptEntry => ({ ...e, content: e.content.replace(',', ', ') })],
    ['time', (e: KeptEntry): KeptEntry => ({ ...e, statement: { ...e.statement, at: '2026-03-02T10:00:00.000Z' } })],
    ['person', (e: KeptEntry): KeptEntry => ({ ...e, statement: { ...e.statement, person: 'q' } })],
    ['digest', (e: KeptEntry): KeptEntry => ({ ...e, hash: e.hash.replace(/^./, (c) => (c === '0' ? '1' : '0')) })],
  ])('a changed %s is named at its own entry', (_what, change) => {
    const entries = chain(6);
    entries[2] = change(entries[2]!);
    const { fault, checked } = verifyChain(entries);
    expect(fault).toMatchObject({ kind: 'content', seq: 3 });
    expect(fault!.sentence).toContain('Entry 3 was changed');
    expect(checked).toBe(2);
  });
  test('an entry in the middle that is gone is named', () => {
    const entries = chain(6);
    entries.splice(2, 1);
    expect(verifyChain(entries).fault).toMatchObject({ kind: 'gap', seq: 3, sentence: 'Entry 3 is missing: entry 4 follows on entry 2.' });
  });
  test('two swapped entries are named', () => {
    const entries = chain(6);
    [entries[2], entries[3]] = [entries[3]!, entries[2]!];
    expect(verifyChain(entries).fault).toMatchObject({ kind: 'gap', seq: 3 });
    expect(verifyChain([...chain(3), chain(3)[1]!]).fault).toMatchObject({ kind: 'order', seq: 2 });
  });
  test('an entry replaced by one that holds in itself does not follow', () => {
    const entries = chain(6);
    entries[3] = relinked(entries[3]!, 'f'.repeat(64));
    expect(verifyChain(entries).fault).toMatchObject({ kind: 'previous', seq: 4 });
  });
  test('a changed entry with a new digest breaks the next link', () => {
    const entries = chain(6);
    entries[2] = relinked({ ...entries[2]!, content: canonicalJson({ event: 'moved', place: 'elsewhere' }) }, entries[2]!.previous);
    expect(verifyChain(entries).fault).toMatchObject({ kind: 'previous', seq: 4 });
  });
  test('a cut end is named from the last number given out', () => {
    expect(verifyEnd(verifyChain(chain(4)), 6).fault).toMatchObject({ kind: 'cut', seq: 5, sentence: 'Entries 5 to 6 were written once and removed from the end.' });
    expect(verifyEnd(verifyChain(chain(4)), 4).fault).toBeNull();
  });
});
