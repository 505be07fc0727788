import type { Alteration } from './report-verdict.ts';
import type { SignatureFile } from './signature-file.ts';

/** What the bytes of a file say by themselves, before anyone asks whose key it is. */
export type ReportCheck =
  | { readonly kind: 'sound'; readonly signed: SignatureFile }
  /** `signed` null where the signature does not hold. */
  | { readonly kind: 'altered'; readonly signed: SignatureFile | null; readonly altered: readonly Alteration[] }
  | { readonly kind: 'unsigned' | 'draft' | 'not-a-report' };
