import { DOCUMENT_NAME } from '../../../app/report-document/report-document.ts';
import { emptySignatureFile, SIGNATURE_FILE_NAME } from '../../../app/signature/signature-file.ts';
import type { Attachment } from '../attachments.ts';

/** What travels inside a report beside its pages. Plain data: it crosses to a worker thread. */
export type Enclosure = {
  /** report.json: canonical JSON text. */
  readonly document: string;
  readonly records: readonly { readonly name: string; readonly mediaType: string; readonly photograph: boolean; readonly description: string; readonly bytes: Uint8Array }[];
  /** Whether room is left for the signature, which is filled in when the bytes of the file are known. */
  readonly signed: boolean;
};

/** The files in the order in which they are attached. */
export function attachmentsOf({ document, records, signed }: Enclosure, modifiedAt: Date): Attachment[] {
  return [
    {
      name: DOCUMENT_NAME, mediaType: 'application/json', relationship: 'Alternative', modifiedAt, bytes: Buffer.from(document, 'utf8'),
      description: 'What this report says, for a program: measurements, findings, opinions, custody, digests of the raw records',
    },
    ...records.map(({ name, mediaType, photograph, description, bytes }): Attachment => ({
      name, mediaType, description, bytes, modifiedAt, relationship: photograph ? 'Source' : 'Data', packed: !mediaType.startsWith('image/'),
    })),
    ...(!signed ? [] : [{
      name: SIGNATURE_FILE_NAME, mediaType: 'text/plain', relationship: 'Supplement', modifiedAt, bytes: emptySignatureFile(), filledLater: true,
      description: 'Signature of the laboratory over this file, with what was signed and the public key',
    } satisfies Attachment]),
  ];
}
