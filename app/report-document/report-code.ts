/** What the QR code on page 1 says. `issuedOn`: day of issue in the laboratory's zone, year-month-day. `digest`: SHA-256 of report.json. */
export type ReportCode = { readonly number: string; readonly revision: number; readonly issuedOn: string; readonly digest: string };

/** Plain text, so that any reader shows it; described in docs/verify-a-report.md. */
export const reportCodeText = ({ number, revision, issuedOn, digest }: ReportCode): string =>
  `${number} revision ${revision}, issued ${issuedOn}, SHA-256 ${digest}`;
