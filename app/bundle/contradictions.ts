import type { BundleFacts } from './bundle-facts.ts';
import type { LedgerWord } from './bundle-paths.ts';

/** A bundle as it is compared. `hashAt`: digest of an entry in its chain, null where the chain does not reach there. */
export type ComparedBundle = { readonly name: string; readonly facts: BundleFacts; hashAt(ledger: LedgerWord, seq: number): Promise<string | null> };

/** Contradictions that are told; more say nothing new. */
const MOST = 20;

const folded = (name: string): string => name.normalize('NFKC').trim().toLowerCase();

/** Whether two bundles say that they are of one laboratory: by a key that both name, or by its name. */
export const sameLaboratory = (a: BundleFacts, b: BundleFacts): boolean => sharesKey(a, b) || folded(a.laboratory) === folded(b.laboratory);
const sharesKey = (a: BundleFacts, b: BundleFacts): boolean => a.keys.some((key) => b.keys.includes(key));

/** Whether the ledger of the later bundle goes on from that of the earlier one, as far as both show it; a sentence where it does not. */
async function ledgerContradiction(ledger: LedgerWord, earlier: ComparedBundle, later: ComparedBundle): Promise<string | null> {
  const before = earlier.facts.ledgers[ledger].head;
  const after = later.facts.ledgers[ledger].head;
  if (after.seq < before.seq) return `The ${ledger} ledger ends at entry ${before.seq} in ${earlier.name} and at entry ${after.seq} in ${later.name}, which was written later: entries are missing.`;
  const other = (seq: number): string => `Entry ${seq} of the ${ledger} ledger is not the same in ${earlier.name} and in ${later.name}: the ledger of the later one does not continue that of the earlier.`;
  const there = before.seq === 0 ? null : await later.hashAt(ledger, before.seq);
  if (there !== null) return there === before.hash ? null : other(before.seq);
  // The later chain begins behind the earlier head: checkpoints of the later bundle reach further back.
  for (const { [ledger]: point } of later.facts.checkpoints) {
    const here = point.seq === 0 || point.seq > before.seq ? null : await earlier.hashAt(ledger, point.seq);
    if (here !== null && here !== point.hash) return other(point.seq);
  }
  return null;
}

function caseContradictions(earlier: ComparedBundle, later: ComparedBundle): string[] {
  const found: string[] = [];
  for (const one of earlier.facts.cases) {
    const now = later.facts.cases.find(({ number }) => number === one.number);
    if (now === undefined) continue;
    if (now.id !== one.id) {
      found.push(`Case ${one.number} is another case in ${later.name} than in ${earlier.name}.`);
      continue;
    }
    for (const ledger of ['custody', 'audit'] as const) {
      const known = new Map(now[ledger]);
      const gone = one[ledger].find(([seq, hash]) => known.get(seq) !== hash);
      if (gone !== undefined) found.push(`Entry ${gone[0]} of the ${ledger} ledger, of case ${one.number}, is ${known.has(gone[0]) ? 'another one' : 'missing'} in ${later.name}; it stands in ${earlier.name}.`);
    }
  }
  return found;
}

function fileContradictions(earlier: ComparedBundle, later: ComparedBundle): string[] {
  const found: string[] = [];
  const cases = new Set(later.facts.cases.map(({ number }) => number));
  for (const one of earlier.facts.reports) {
    const what = `Report ${one.number}, revision ${one.revision},`;
    const now = later.facts.reports.find(({ number, revision }) => number === one.number && revision === one.revision);
    if (now !== undefined && now.sha256 !== one.sha256) found.push(`${what} is another file in ${later.name} than in ${earlier.name}.`);
    if (now === undefined && cases.has(one.case)) found.push(`${what} of case ${one.case} is missing in ${later.name}; it stands in ${earlier.name}.`);
  }
  for (const one of earlier.facts.rawRecords) {
    const now = later.facts.rawRecords.find(({ id }) => id === one.id);
    if (now !== undefined && now.sha256 !== one.sha256) found.push(`The raw record “${one.name}” of case ${one.case} is another file in ${later.name} than in ${earlier.name}.`);
    if (now === undefined && cases.has(one.case)) found.push(`The raw record “${one.name}” of case ${one.case} is missing in ${later.name}; it stands in ${earlier.name}.`);
  }
  return found;
}

/**
 * What two bundles that say they are of one laboratory say differently, in sentences; none where they are of two laboratories. A case that went on
 * between the two contradicts nothing: records are added, and what was written once stays.
 */
export async function contradictions(a: ComparedBundle, b: ComparedBundle): Promise<string[]> {
  if (!sameLaboratory(a.facts, b.facts)) return [];
  const [earlier, later] = a.facts.exportedAt <= b.facts.exportedAt ? [a, b] : [b, a];
  if (!sharesKey(a.facts, b.facts)) {
    return a.facts.keys.length === 0 && b.facts.keys.length === 0 ? [] : [`${later.name} names the laboratory ${later.facts.laboratory}, as ${earlier.name} does, but no key of the one is a key of the other: one of them may be of somebody else.`];
  }
  const ledgers: string[] = [];
  for (const ledger of ['custody', 'audit'] as const) {
    const sentence = await ledgerContradiction(ledger, earlier, later);
    if (sentence !== null) ledgers.push(sentence);
  }
  return [...ledgers, ...caseContradictions(earlier, later), ...fileContradictions(earlier, later)].slice(0, MOST);
}
