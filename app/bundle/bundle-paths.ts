/** Where things stand in a bundle. */
export const README_NAME = 'README.txt';
export const INDEX_NAME = 'index.json';
export const MANIFEST_NAME = 'manifest.json';
export const SUMS_NAME = 'SHA256SUMS';
export const SEAL_NAME = 'seal.txt';
export const CHECKPOINTS_NAME = 'ledger/checkpoints.json';

export type LedgerWord = 'custody' | 'audit';

/** Part of the chain of a ledger, counted from 1. */
export const chainName = (ledger: LedgerWord, part: number): string => `ledger/${ledger}-chain-${String(part).padStart(4, '0')}.txt`;
