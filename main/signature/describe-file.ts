import { createHash } from 'node:crypto';
import type { SignedFile, Stretch } from '../../app/signature/report-statement.ts';
import { emptySignatureFile } from '../../app/signature/signature-file.ts';

/** SHA-256, in hexadecimal, of a file without one stretch of it. */
export function digestWithout(file: Uint8Array, { at, bytes }: Stretch): string {
  return createHash('sha256').update(file.subarray(0, at)).update(file.subarray(at + bytes)).digest('hex');
}

const FIRST_ATTACHED = '/Type /EmbeddedFile';
const LAST_ATTACHED = '/Type /Filespec';

/** Where the attached files stand: from the first one to the entry of the last. */
function attachmentsIn(pdf: Buffer): Stretch {
  const at = pdf.indexOf(FIRST_ATTACHED);
  const end = pdf.lastIndexOf(LAST_ATTACHED);
  if (at < 0 || end < at) throw new Error('describeFile: nothing is attached');
  return { at, bytes: end - at };
}

/** What is to be signed of a report's file, whose room for the signature, in the last attached file, is still empty. Throws where it has no such room. */
export function describeFile(file: Uint8Array): SignedFile {
  const pdf = Buffer.from(file.buffer, file.byteOffset, file.byteLength);
  const room = emptySignatureFile();
  const at = pdf.indexOf(room, Math.max(0, pdf.lastIndexOf(FIRST_ATTACHED)));
  if (at < 0) throw new Error('describeFile: there is no room for a signature');
  const signature = { at, bytes: room.byteLength };
  const attachments = attachmentsIn(pdf);
  return { bytes: pdf.byteLength, sha256: digestWithout(pdf, signature), signature, attachments, pages: digestWithout(pdf, attachments) };
}
