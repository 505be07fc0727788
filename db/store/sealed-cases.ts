import { bundleFacts, type BundleFacts } from '../../app/bundle/bundle-facts.ts';
import { CASE_WORD_PARTS, type CaseWords } from '../../app/bundle/case-words.ts';
import type { StoreHandle, WriteTx } from '../handle.ts';
import { sealedCase, sealedFacts } from '../schema/index.ts';
import { SEPARATOR } from '../search/search-documents.ts';
import { writeSearch } from '../search/write-search.ts';

/** A case of a kept bundle, as it is found. */
export type SealedCaseWords = { readonly folder: string; readonly number: string; readonly client: string; readonly words: CaseWords };

/** What two bundles say differently. `other`: the bundle that was there before. */
export type Contradiction = { readonly other: string; readonly sentence: string };

export type BundleDescription = { readonly facts: BundleFacts; readonly cases: readonly SealedCaseWords[] };

/** What is read out of kept bundles, derived from them. */
export type SealedCasesStore = {
  /** Bundles that were not described yet, in the order in which they were taken in. */
  undescribed(): Promise<string[]>;
  /** Keeps what was read out of a bundle, and how it contradicts others; once. */
  describe(id: string, description: BundleDescription, contradictions: readonly Contradiction[]): Promise<void>;
  /** Every bundle that was described, in the order in which they were taken in. */
  facts(): Promise<{ readonly id: string; readonly name: string; readonly facts: BundleFacts }[]>;
  /** What bundles contradict one another, in the order in which they were taken in. `id`: the one that came later. */
  contradictions(): Promise<(Contradiction & { readonly id: string })[]>;
};

/** Control characters would be taken for the border between two texts. */
const joined = (texts: readonly string[]): string => texts.map((text) => text.replaceAll(SEPARATOR, ' ')).join(SEPARATOR);

function putCase(tx: WriteTx, bundleId: string, { folder, number, client, words }: SealedCaseWords): string {
  const id = `${bundleId}/${folder}`;
  const parts = Object.fromEntries(CASE_WORD_PARTS.map((part) => [part, joined(words[part])])) as Record<keyof CaseWords, string>;
  tx.orm.insert(sealedCase).values({ id, bundleId, folder, number, client, ...parts }).run();
  return id;
}

export function createSealedCasesStore(handle: StoreHandle): SealedCasesStore {
  return {
    async undescribed() {
      return handle.read.all<{ id: string }>('SELECT b.id FROM sealed_bundle b WHERE NOT EXISTS (SELECT 1 FROM sealed_facts f WHERE f.bundle_id = b.id) ORDER BY b.rowid').map(({ id }) => id);
    },
    describe: (id, { facts, cases }, contradictions) => handle.transact((tx) => {
      if (tx.get('SELECT 1 FROM sealed_facts WHERE bundle_id = ?', [id]) !== undefined) return;
      tx.orm.insert(sealedFacts).values({ bundleId: id, facts: JSON.stringify(facts), contradictions: JSON.stringify(contradictions) }).run();
      writeSearch(tx, 'sealed', cases.map((one) => putCase(tx, id, one)));
    }),
    async facts() {
      return handle.read.all<{ id: string; name: string; facts: string }>('SELECT b.id, b.name, f.facts FROM sealed_facts f JOIN sealed_bundle b ON b.id = f.bundle_id ORDER BY b.rowid')
        .map(({ id, name, facts }) => ({ id, name, facts: bundleFacts.parse(JSON.parse(facts)) }));
    },
    async contradictions() {
      return handle.read.all<{ id: string; contradictions: string }>('SELECT b.id, f.contradictions FROM sealed_facts f JOIN sealed_bundle b ON b.id = f.bundle_id ORDER BY b.rowid')
        .flatMap(({ id, contradictions }) => (JSON.parse(contradictions) as Contradiction[]).map((one) => ({ id, ...one })));
    },
  };
}
