export type ReadmeFacts = { readonly caseNumber: string; readonly exportedAt: string; readonly demonstration: boolean };

/** README.txt of a bundle: what is in it, and how to check it without this program. Plain ASCII, lines under 80 characters. */
export function bundleReadme({ caseNumber, exportedAt, demonstration }: ReadmeFacts): string {
  return `Case ${caseNumber}
exported ${exportedAt} (UTC)
${demonstration ? '\nINVENTED DEMONSTRATION DATA: no person, stone or client in it is real.\n' : ''}
What is here
  reports/       the issued reports as PDF, byte for byte as they were issued
  raw/           the files of instruments and cameras, byte for byte as they
                 came; the name begins with the run (R5) or "photo" and the
                 first eight digits of the file's SHA-256
  case.json      everything recorded of the case: items, stones, runs, findings,
                 conclusions, reports (UTF-8, schema "culet-case-1")
  custody.json   the entries of the custody ledger that concern the case
                 (schema "culet-custody-1")
  SHA256SUMS     the SHA-256 of every other file

How to check that nothing was altered
  Linux          sha256sum -c SHA256SUMS
  macOS          shasum -a 256 -c SHA256SUMS
  Windows        Get-FileHash -Algorithm SHA256 <file>   (PowerShell; compare
                 with the line of that file in SHA256SUMS)
  The last pages of a report print the full SHA-256 of each raw record: compare
  them with the same lines.

How to check an entry of the custody ledger
  Write its "statement" as canonical JSON (RFC 8785) in UTF-8 and take its
  SHA-256: it must be the entry's "hash". "previous" is the hash of the entry
  before it in the whole ledger of the house, of which this is an extract.
`;
}
