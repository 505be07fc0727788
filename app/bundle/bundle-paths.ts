/** Where things stand in a bundle. */
export const README_NAME = 'README.txt';
export const INDEX_NAME = 'index.json';
export const MANIFEST_NAME = 'manifest.json';
export const SUMS_NAME = 'SHA256SUMS';
export const SEAL_NAME = 'seal.txt';
export const CHECKPOINTS_NAME = 'ledger/checkpoints.json';

export type LedgerWord = 'custody' | 'audit';

/** Entries of a ledger in one file of digests: about 3.6 MB. */
export const CHAIN_PART = 50_000;

/** Part of the chain of a ledger, counted from 1; each holds CHAIN_PART entries, the last one what is left. */
export const chainName = (ledger: LedgerWord, part: number): string => `ledger/${ledger}-chain-${String(part).padStart(4, '0')}.txt`;
