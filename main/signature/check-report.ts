import { createHash } from 'node:crypto';
import { reportDocument, type ReportDocument } from '../../app/report-document/report-document.ts';
import type { ReportCheck } from '../../app/signature/report-check.ts';
import type { Alteration } from '../../app/signature/report-verdict.ts';
import { looksLikeSignatureFile, readSignatureFile, SIGNED_REMARK, type SignatureFile } from '../../app/signature/signature-file.ts';
import { verifySignature } from '../../app/signature/verify-signature.ts';
import { digestWithout } from './describe-file.ts';
import { embeddedFiles, type EmbeddedFile } from './embedded-files.ts';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const altered = (part: Alteration['part'], sentence: string, name = ''): Alteration => ({ part, name, sentence });

type Found = { readonly file: EmbeddedFile; readonly digest: string | null };

/** What is attached, each with its digest. */
const digested = (files: readonly EmbeddedFile[]): Found[] => files.map((file) => ({ file, digest: file.bytes === null ? null : sha256(file.bytes) }));

/** The report's document where it is as it was signed. */
function soundDocument(found: readonly Found[], { statement }: SignatureFile): ReportDocument | null {
  const bytes = found.find(({ digest }) => digest === statement.content.sha256)?.file.bytes;
  if (!bytes) return null;
  try {
    return reportDocument.parse(JSON.parse(Buffer.from(bytes).toString('utf8')));
  } catch {
    return null;
  }
}

function alteredAttachments(found: readonly Found[], signed: SignatureFile): Alteration[] {
  if (!found.some(({ digest }) => digest === signed.statement.content.sha256)) {
    return [altered('report.json', 'report.json, which says for a program what the report says, is not the one that was signed, or is missing. Whether the raw records are unaltered can’t be told without it.')];
  }
  const digests = new Set(found.map(({ digest }) => digest));
  return (soundDocument(found, signed)?.records ?? [])
    .filter(({ attachedAs, sha256: wanted }) => attachedAs !== null && !digests.has(wanted))
    .map(({ attachedAs }) => altered('attached record', `The attached record ${attachedAs!} is not the one that was signed, or is missing.`, attachedAs!));
}

const bytesWords = (count: number): string => (count === 1 ? 'one byte' : `${count} bytes`);

/** What differs from the file that was signed, as far as it can be told. */
function alterations(file: Uint8Array, found: readonly Found[], signed: SignatureFile): Alteration[] {
  const { file: then } = signed.statement;
  const more = file.byteLength - then.bytes;
  if (more > 0 && digestWithout(file.subarray(0, then.bytes), then.signature) === then.sha256) {
    return [altered('file', `${bytesWords(more)} ${more === 1 ? 'was' : 'were'} added behind the end after it was signed, as programs do that save notes, marks or changed pages. The report up to there is as it was signed.`)];
  }
  const attachments = alteredAttachments(found, signed);
  if (more !== 0) {
    const size = more < 0 ? `The file is ${bytesWords(-more)} shorter than it was` : `The file is ${bytesWords(more)} longer than it was`;
    return [...attachments, altered('pages', `${size}: it was cut off, joined with another, or written anew by another program. Its pages can’t be compared with those that were signed${attachments.length === 0 ? '; the attached files are as they were' : ''}.`)];
  }
  const pages = digestWithout(file, then.attachments) === then.pages ? [] : [altered('pages', 'The pages, or what holds the file together, are not as they were signed.')];
  if (pages.length + attachments.length > 0) return [...pages, ...attachments];
  return [altered('file', 'The pages and the attached files are as they were signed; what stands between the attached files is not.')];
}

/** A file without a sound signature: did it ever have one? */
function withoutSignature(file: Uint8Array, found: readonly Found[]): ReportCheck {
  const pdf = Buffer.from(file.buffer, file.byteOffset, file.byteLength);
  const broken = found.some(({ file: { bytes } }) => bytes !== null && looksLikeSignatureFile(bytes));
  const document = found.some(({ file: { bytes } }) => bytes !== null && Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).includes('"schema":"culet-report-document-'));
  if (broken || document || pdf.includes(`% ${SIGNED_REMARK}`)) {
    return { kind: 'altered', signed: null, altered: [altered('signature', 'This was a signed report of Culet; its signature was damaged, changed or cut off. Nothing in it can be relied on.')] };
  }
  if (!pdf.subarray(0, 1024).includes('%PDF-') || !pdf.includes('<pdf:Producer>Culet</pdf:Producer>')) return { kind: 'not-a-report' };
  const title = /<dc:title>.*?<rdf:li[^>]*>([^<]*)/s.exec(pdf.toString('utf8', Math.max(0, pdf.indexOf('<dc:title>'))))?.[1] ?? '';
  if (title.endsWith(', draft')) return { kind: 'draft' };
  return /screening report/i.test(title) ? { kind: 'unsigned' } : { kind: 'not-a-report' };
}

/** Judges the bytes of a report by what they hold themselves. Whatever the bytes are, it gives an answer and never throws. */
export function checkReport(file: Uint8Array): ReportCheck {
  const found = digested(embeddedFiles(file));
  const signatures = found.flatMap(({ file: { at, bytes } }) => {
    const read = bytes === null ? null : readSignatureFile(bytes);
    return read !== null && verifySignature(read.publicKey, read.message, read.signature) ? [{ at, read }] : [];
  });
  const [first] = signatures;
  if (first === undefined) return withoutSignature(file, found);
  const numbers = [...new Set(signatures.map(({ read }) => `${read.statement.number}, revision ${read.statement.revision}`))];
  if (numbers.length > 1) {
    return { kind: 'altered', signed: null, altered: [altered('file', `Several reports were joined into this file: ${numbers.join('; ')}. Each is checked in the file it was issued in.`)] };
  }
  const { statement } = first.read;
  const whole = statement.file.bytes === file.byteLength && first.at === statement.file.signature.at && digestWithout(file, statement.file.signature) === statement.file.sha256;
  return whole ? { kind: 'sound', signed: first.read } : { kind: 'altered', signed: first.read, altered: alterations(file, found, first.read) };
}
