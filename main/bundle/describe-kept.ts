import { auditDocument, checkpointsDocument, indexDocument } from '../../app/bundle/bundle-documents.ts';
import { caseFacts, factsOf, type BundleFacts } from '../../app/bundle/bundle-facts.ts';
import { CHAIN_PART, CHECKPOINTS_NAME, chainName, INDEX_NAME, type LedgerWord } from '../../app/bundle/bundle-paths.ts';
import { caseDocument, custodyDocument } from '../../app/bundle/case-document.ts';
import { caseWords } from '../../app/bundle/case-words.ts';
import { contradictions, sameLaboratory, type ComparedBundle } from '../../app/bundle/contradictions.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { BundleDescription, Contradiction, SealedCaseWords } from '../../db/store/sealed-cases.ts';
import type { KeptBundles } from './kept-bundle.ts';
import { aTurn } from '../../db/a-turn.ts';
import { inTurn } from '../people/in-turn.ts';

/** Reads one document of a kept bundle; null where it can't be read any more. */
type ReadDocument = (path: string) => Promise<string | null>;

async function describe(read: ReadDocument): Promise<BundleDescription | null> {
  const json = async <T>(path: string, schema: { parse(value: unknown): T }): Promise<T | null> => {
    const text = await read(path);
    await aTurn();
    return text === null ? null : schema.parse(JSON.parse(text));
  };
  const index = await json(INDEX_NAME, indexDocument);
  const checkpoints = await json(CHECKPOINTS_NAME, checkpointsDocument);
  if (index === null || checkpoints === null) return null;
  const words: SealedCaseWords[] = [];
  const facts: ReturnType<typeof caseFacts>[] = [];
  for (const { folder, number, client } of index.cases) {
    const record = await json(`${folder}/case.json`, caseDocument);
    const custody = await json(`${folder}/custody.json`, custodyDocument);
    const audit = await json(`${folder}/audit.json`, auditDocument);
    if (record === null || custody === null || audit === null) return null;
    words.push({ folder, number, client, words: caseWords(record) });
    facts.push(caseFacts(record, custody, audit));
  }
  return { facts: factsOf(index, checkpoints, facts), cases: words };
}

/** Digest of an entry in the chain of a bundle. The file it stands in is read once. */
function hashesOf(read: ReadDocument, facts: BundleFacts): ComparedBundle['hashAt'] {
  const files = new Map<string, Map<number, string>>();
  return async (ledger: LedgerWord, seq: number) => {
    const { from, head } = facts.ledgers[ledger];
    if (from === 0 || seq < from || seq > head.seq) return null;
    if (seq === head.seq) return head.hash;
    const path = chainName(ledger, Math.floor((seq - from) / CHAIN_PART) + 1);
    let known = files.get(path);
    if (known === undefined) {
      const text = await read(path) ?? '';
      known = new Map(text.split('\n').map((line) => line.split(' ')).map(([number = '', hash = '']) => [Number(number), hash]));
      files.set(path, known);
      await aTurn();
    }
    return known.get(seq) ?? null;
  };
}

/** Describes the kept bundles that are not described yet: what is found of them, and what of them contradicts others. One after the other; gives their number. */
export function createDescribeKept(kept: KeptBundles): (casebook: Casebook) => Promise<number> {
  const turn = inTurn();

  async function describeOne(casebook: Casebook, id: string): Promise<boolean> {
    const reader = (of: string): ReadDocument => async (path) => {
      const file = await kept.file(casebook, of, path);
      return file.ok ? new TextDecoder().decode(file.value) : null;
    };
    const description = await describe(reader(id));
    // Verifying names one that is no longer as it came; nothing is read out of it.
    if (description === null) return false;
    const bundle = await casebook.sealedBundles.get(id);
    const named = (name: string, facts: BundleFacts): string => `“${name}” of ${facts.exportedAt.slice(0, 10)}`;
    const here: ComparedBundle = { name: named(bundle?.name ?? '', description.facts), facts: description.facts, hashAt: hashesOf(reader(id), description.facts) };
    const found: Contradiction[] = [];
    for (const other of await casebook.sealedCases.facts()) {
      if (!sameLaboratory(other.facts, description.facts)) continue;
      const there: ComparedBundle = { name: named(other.name, other.facts), facts: other.facts, hashAt: hashesOf(reader(other.id), other.facts) };
      found.push(...(await contradictions(there, here)).map((sentence) => ({ other: other.id, sentence })));
    }
    await casebook.sealedCases.describe(id, description, found);
    return true;
  }

  return (casebook) => turn(async () => {
    if (casebook.readOnly) return 0;
    let done = 0;
    for (const id of await casebook.sealedCases.undescribed()) if (await describeOne(casebook, id)) done += 1;
    return done;
  });
}
