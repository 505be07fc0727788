import { hexToBytes } from '@noble/hashes/utils.js';
import type { AuditDocument, CheckpointsDocument, IndexDocument } from '../../app/bundle/bundle-documents.ts';
import type { LedgerWord } from '../../app/bundle/bundle-paths.ts';
import type { BundleFault } from '../../app/bundle/bundle-verdict.ts';
import type { CustodyDocument } from '../../app/bundle/case-document.ts';
import { canonicalJson, type JsonValue } from '../../app/custody/canonical-json.ts';
import { GENESIS, sha256Hex } from '../../app/custody/chain.ts';
import { isSigned } from '../../app/signature/checkpoint-statement.ts';
import { fingerprintOf } from '../../app/signature/fingerprint.ts';
import { fault } from './read-archive.ts';

type Entry = (CustodyDocument | AuditDocument)['entries'][number];

/** A digest that must stand at a number of a chain, and what it means where it does not. */
type Expected = { readonly hash: string; readonly path: string; readonly sentence: string };

export type LedgerCheck = {
  /** Recomputes the entries of a document. */
  entries(ledger: LedgerWord, path: string, caseId: string, entries: readonly Entry[]): void;
  checkpoints(path: string, document: CheckpointsDocument): void;
  /** Takes a piece of a file of digests; lines may be cut anywhere. `path`: where it stands. */
  chain(ledger: LedgerWord, path: string, piece: string): void;
  /** Compares what was expected with what was walked. */
  finish(index: IndexDocument): void;
  readonly counts: { custody: number; audit: number; walked: number; checkpoints: number };
};

const LINE = /^(0|[1-9][0-9]*) ([0-9a-f]{64})$/;

/** Recomputes every entry in a bundle and walks the digests between them. Entries and checkpoints are told first, the chains last. */
export function createLedgerCheck(faults: BundleFault[]): LedgerCheck {
  const expected = { custody: new Map<number, Expected[]>(), audit: new Map<number, Expected[]>() };
  const walk = { custody: { first: 0, last: 0, hash: '', rest: '' }, audit: { first: 0, last: 0, hash: '', rest: '' } };
  const counts = { custody: 0, audit: 0, walked: 0, checkpoints: 0 };
  let document: CheckpointsDocument | null = null;

  const expect = (ledger: LedgerWord, seq: number, what: Expected): void => {
    const there = expected[ledger].get(seq);
    if (there === undefined) expected[ledger].set(seq, [what]);
    else there.push(what);
  };

  function takeLine(ledger: LedgerWord, path: string, line: string): void {
    const found = LINE.exec(line);
    const at = walk[ledger];
    const seq = Number(found?.[1]);
    if (found === null || (at.last !== 0 && seq !== at.last + 1)) {
      faults.push(fault('ledger', path, `The digests of the ${ledger} ledger are not numbered without gaps after entry ${at.last}.`));
      return;
    }
    if (at.first === 0) at.first = seq;
    at.last = seq;
    at.hash = found[2]!;
    counts.walked += 1;
    for (const one of expected[ledger].get(seq) ?? []) if (one.hash !== at.hash) faults.push(fault('ledger', one.path, one.sentence));
    expected[ledger].delete(seq);
  }

  return {
    counts,
    entries(ledger, path, caseId, entries) {
      let before = 0;
      for (const { statement, hash } of entries) {
        const { seq, previous } = statement;
        if (seq <= before || statement.case !== caseId) faults.push(fault('ledger', path, `Entry ${seq} of the ${ledger} ledger stands out of its order, or is one of another case.`));
        before = seq;
        if (sha256Hex(canonicalJson(statement as unknown as JsonValue)) !== hash) faults.push(fault('ledger', path, `Entry ${seq} of the ${ledger} ledger no longer gives its digest.`));
        expect(ledger, seq, { hash, path, sentence: `Entry ${seq} of the ${ledger} ledger is not the one in the chain.` });
        if (seq > 1) expect(ledger, seq - 1, { hash: previous, path, sentence: `Entry ${seq} of the ${ledger} ledger does not follow on the entry before it.` });
        else if (previous !== GENESIS) faults.push(fault('ledger', path, `Entry 1 of the ${ledger} ledger names an entry before it.`));
        counts[ledger] += 1;
      }
    },
    checkpoints(path, read) {
      document = read;
      for (const one of read.checkpoints) {
        const { at, audit, custody } = one.statement;
        if (!isSigned(one)) faults.push(fault('checkpoint', path, `The signature of the checkpoint of ${at} does not hold.`));
        const sentence = `A ledger is not the one that the checkpoint of ${at} was signed over.`;
        expect('audit', audit.seq, { hash: audit.hash, path, sentence });
        expect('custody', custody.seq, { hash: custody.hash, path, sentence });
        counts.checkpoints += 1;
      }
    },
    chain(ledger, path, piece) {
      const lines = (walk[ledger].rest + piece).split('\n');
      walk[ledger].rest = lines.pop() ?? '';
      for (const line of lines) takeLine(ledger, path, line);
    },
    finish({ ledgers, keys }) {
      for (const ledger of ['custody', 'audit'] as const) {
        const { from, head, entries } = ledgers[ledger];
        const { first, last, hash, rest } = walk[ledger];
        const walked = first === 0 ? 0 : last - first + 1;
        if (rest !== '' || walked !== entries || (entries > 0 && (first !== from || last !== head.seq || hash !== head.hash))) faults.push(fault('ledger', '', `The digests of the ${ledger} ledger do not reach from its first entry here to its end.`));
        // What was signed before the first entry that is here, or where no entry is here, can't be walked to and says nothing of these cases.
        for (const [seq, ones] of expected[ledger]) if (entries > 0 && seq >= from) for (const one of ones) faults.push(fault('ledger', one.path, one.sentence));
      }
      const own = new Set(keys.map(({ publicKey }) => publicKey));
      for (const { statement, publicKey } of document?.checkpoints ?? []) {
        if (!own.has(publicKey)) faults.push(fault('checkpoint', '', `The checkpoint of ${statement.at} was signed by a key that is not among the laboratory’s.`));
      }
      for (const { publicKey, fingerprint, path } of keys) if (fingerprintOf(hexToBytes(publicKey)) !== fingerprint) faults.push(fault('document', path, 'A key and its fingerprint do not belong together.'));
    },
  };
}
