import { describe, expect, test } from 'vitest';
import type { BundleFacts } from '../../../../app/bundle/bundle-facts.ts';
import { contradictions, sameLaboratory, type ComparedBundle } from '../../../../app/bundle/contradictions.ts';

const hex = (text: string): string => Buffer.from(text).toString('hex').padEnd(64, '0');
/** The digest that every entry of the invented ledgers has. */
const hash = (ledger: string, seq: number): string => hex(`${ledger} ${seq}`);

const facts = (change: Partial<BundleFacts> = {}): BundleFacts => ({
  laboratory: 'Invented Laboratory', exportedAt: '2026-06-01T09:00:00.000Z', keys: [hex('key')],
  ledgers: { custody: { from: 1, head: { seq: 10, hash: hash('custody', 10) } }, audit: { from: 1, head: { seq: 40, hash: hash('audit', 40) } } },
  checkpoints: [], cases: [{ number: 'C-1', id: 'case-1', custody: [[3, hash('custody', 3)]], audit: [[8, hash('audit', 8)]] }],
  reports: [{ number: 'S-1', revision: 1, case: 'C-1', sha256: hex('pdf') }],
  rawRecords: [{ id: 'raw-1', name: 'pl.txt', case: 'C-1', sha256: hex('raw') }], ...change,
});
/** As long as the invented ledger goes; `forged` says other digests from there on. */
const bundle = (name: string, made: BundleFacts, forged = Infinity): ComparedBundle => ({
  name, facts: made,
  hashAt: (ledger, seq) => Promise.resolve(seq < made.ledgers[ledger].from || seq > made.ledgers[ledger].head.seq ? null : seq >= forged ? hex(`forged ${seq}`) : hash(ledger, seq)),
});
const longer = (change: Partial<BundleFacts> = {}): BundleFacts => facts({
  exportedAt: '2026-09-01T09:00:00.000Z',
  ledgers: { custody: { from: 1, head: { seq: 15, hash: hash('custody', 15) } }, audit: { from: 1, head: { seq: 60, hash: hash('audit', 60) } } }, ...change,
});
const between = (a: BundleFacts, b: BundleFacts, forged?: number) => contradictions(bundle('“A”', a), bundle('“B”', b, forged));

describe('two bundles of one laboratory', () => {
  test('that went on contradict nothing, whichever was taken in first', async () => {
    const more = longer({ cases: [{ ...facts().cases[0]!, custody: [[3, hash('custody', 3)], [12, hash('custody', 12)]] }, { number: 'C-2', id: 'case-2', custody: [], audit: [] }] });
    expect(await between(facts(), more)).toEqual([]);
    expect(await contradictions(bundle('“B”', more), bundle('“A”', facts()))).toEqual([]);
  });

  test.each<[string, BundleFacts, number | undefined, RegExp]>([
    ['a ledger that does not go on', longer(), 20, /^Entry 40 of the audit ledger is not the same in “A” and in “B”/],
    ['a ledger that became shorter', longer({ ledgers: { custody: { from: 1, head: { seq: 9, hash: hash('custody', 9) } }, audit: { from: 1, head: { seq: 60, hash: hash('audit', 60) } } } }), undefined, /^The custody ledger ends at entry 10 in “A” and at entry 9 in “B”, which was written later/],
    ['another case of the same number', longer({ cases: [{ number: 'C-1', id: 'other', custody: [], audit: [] }] }), undefined, /^Case C-1 is another case in “B” than in “A”/],
    ['an entry of a case that is gone', longer({ cases: [{ ...facts().cases[0]!, custody: [] }] }), undefined, /^Entry 3 of the custody ledger, of case C-1, is missing in “B”/],
    ['an entry of a case that was exchanged', longer({ cases: [{ ...facts().cases[0]!, audit: [[8, hex('forged')]] }] }), undefined, /^Entry 8 of the audit ledger, of case C-1, is another one in “B”/],
    ['another file of a report', longer({ reports: [{ ...facts().reports[0]!, sha256: hex('other') }] }), undefined, /^Report S-1, revision 1, is another file in “B” than in “A”/],
    ['a report that is gone', longer({ reports: [] }), undefined, /^Report S-1, revision 1, of case C-1 is missing in “B”/],
    ['another raw record', longer({ rawRecords: [{ ...facts().rawRecords[0]!, sha256: hex('other') }] }), undefined, /^The raw record “pl.txt” of case C-1 is another file/],
    ['a raw record that is gone', longer({ rawRecords: [] }), undefined, /^The raw record “pl.txt” of case C-1 is missing/],
    ['no key in common', longer({ keys: [hex('other')] }), undefined, /^“B” names the laboratory Invented Laboratory, as “A” does, but no key/],
  ])('%s is said by name', async (_what, later, forged, sentence) => {
    const found = await between(facts(), later, forged);
    expect(found.length).toBeGreaterThan(0);
    expect(found[0]).toMatch(sentence);
  });

  test('whose chains do not meet are held together by a checkpoint', async () => {
    const ledgers = { custody: { from: 12, head: { seq: 15, hash: hash('custody', 15) } }, audit: { from: 50, head: { seq: 60, hash: hash('audit', 60) } } };
    const checkpoint = (audit: string) => longer({ ledgers, cases: [], reports: [], rawRecords: [], checkpoints: [{ at: '2026-05-01T09:00:00.000Z', custody: { seq: 5, hash: hash('custody', 5) }, audit: { seq: 30, hash: audit } }] });
    expect(await between(facts(), checkpoint(hash('audit', 30)))).toEqual([]);
    expect(await between(facts(), checkpoint(hex('forged')))).toEqual([expect.stringContaining('Entry 30 of the audit ledger is not the same')]);
  });

  test('a key that was renewed is still the same laboratory; another name with another key is none', () => {
    expect(sameLaboratory(facts(), facts({ laboratory: 'Renamed', keys: [hex('key'), hex('new')] }))).toBe(true);
    expect(sameLaboratory(facts(), facts({ laboratory: ' INVENTED laboratory', keys: [hex('new')] }))).toBe(true);
    expect(sameLaboratory(facts(), facts({ laboratory: 'Other', keys: [hex('new')] }))).toBe(false);
  });
});
