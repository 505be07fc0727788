import { BUNDLE_REMARK } from './zip-form.ts';
import type { Period } from './bundle-documents.ts';

export type ReadmeFacts = {
  readonly laboratory: string; readonly exportedAt: string; readonly demonstration: boolean;
  readonly cases: readonly string[]; readonly period: Period | null; readonly zone: string;
  /** Why nobody signed; empty where the laboratory's key did. */
  readonly unsignedBecause: string;
};

const ascii = (text: string): string => text.normalize('NFKD').replace(/[^\x20-\x7e]/g, '');

/** README.txt of a bundle: what is in it, and how to check it without this program. Plain ASCII, lines under 80 characters. */
export function bundleReadme({ laboratory, exportedAt, demonstration, cases, period, zone, unsignedBecause }: ReadmeFacts): string {
  const what = period === null ? `Case ${cases[0] ?? ''}` : `${cases.length} ${cases.length === 1 ? 'case' : 'cases'}, received ${period.from} to ${period.to} (days in ${zone})`;
  return `${BUNDLE_REMARK}
${ascii(what)}
of ${ascii(laboratory)}
exported ${exportedAt} (UTC)
${demonstration ? '\nINVENTED DEMONSTRATION DATA: no person, stone or client in it is real.\n' : ''}${unsignedBecause === '' ? '' : '\nNOT SIGNED: the key of the laboratory was not open when this was written.\n'}
What is here
  index.json     the cases, the keys, and how the ledgers are represented
  cases/NUMBER/  one folder for each case:
    case.json    everything recorded of it: items, stones, runs, findings,
                 conclusions, reports (UTF-8, schema "culet-case-1")
    custody.json the entries of the custody ledger that concern it
    audit.json   the entries of the audit ledger that concern it
    reports/     the issued reports as PDF, byte for byte as they were issued
    raw/         the files of instruments and cameras, byte for byte as they
                 came; the name begins with the run (R5), "photo" or "list"
                 and the first eight digits of the file's SHA-256
  ledger/        the digests of all entries of both ledgers from the first that
                 is here to the newest, one line each (number, digest); and
                 checkpoints.json, how far they had come as it was signed
  keys/          the public keys of the laboratory
  schemas/       a JSON Schema for each kind of document
  SHA256SUMS     the SHA-256 of every file above
  manifest.json  size and SHA-256 of every file, SHA256SUMS included
  seal.txt       the digests of manifest.json and of all bytes of the zip
                 before the seal, signed with the laboratory's key

How to check that nothing was altered
  Linux          sha256sum -c SHA256SUMS
  macOS          shasum -a 256 -c SHA256SUMS
  Windows        Get-FileHash -Algorithm SHA256 <file>   (PowerShell; compare
                 with the line of that file in SHA256SUMS)
  The last pages of a report print the full SHA-256 of each raw record: compare
  them with the same lines.

How to check the signature
  sha256sum manifest.json      must be "manifest"."sha256" in seal.txt
  head -n 1 seal.txt | tr -d '\\n' > statement
  sed -n 2p seal.txt | base64 -d > signature
  sed -n '3,5p' seal.txt > key.pem
  openssl pkeyutl -verify -pubin -inkey key.pem -rawin -in statement \\
    -sigfile signature
  The key is the laboratory's only if its fingerprint is the one that the
  laboratory tells you by another way, for instance by telephone.

How to check an entry of a ledger
  Write its "statement" as canonical JSON (RFC 8785) in UTF-8 and take its
  SHA-256: it must be the entry's "hash", and stand at its number in ledger/.
  "previous" must be the digest on the line before. Of entries about other
  cases only the digest is here: their content is not given away.
`;
}
