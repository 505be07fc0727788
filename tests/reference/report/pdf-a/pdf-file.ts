import type { PDFRawStream} from '@cantoo/pdf-lib';
import { decodePDFRawStream, PDFArray, PDFDict, PDFDocument, PDFName, PDFRef, PDFStream, type PDFObject } from '@cantoo/pdf-lib';

/** A PDF file as a parser of others sees it, beside its bytes as they stand (one character a byte). */
export type PdfFile = {
  readonly raw: string;
  readonly doc: PDFDocument;
  readonly objects: readonly { readonly ref: PDFRef; readonly object: PDFObject }[];
  /** Every value anywhere in the file, with the object it stands in. */
  readonly values: readonly { readonly ref: PDFRef; readonly value: PDFObject }[];
  readonly dicts: readonly { readonly ref: PDFRef; readonly dict: PDFDict }[];
};

const isRawStream = (object: PDFObject): object is PDFRawStream => object instanceof PDFStream && 'contents' in object;

function inside(value: PDFObject): PDFObject[] {
  const next = value instanceof PDFDict ? value.entries().flatMap(([key, entry]) => [key, entry]) : value instanceof PDFArray ? value.asArray() : value instanceof PDFStream ? [value.dict] : [];
  return [value, ...next.flatMap(inside)];
}

export async function openPdf(bytes: Uint8Array): Promise<PdfFile> {
  const doc = await PDFDocument.load(bytes, { ignoreEncryption: true, throwOnInvalidObject: true, updateMetadata: false });
  const objects = doc.context.enumerateIndirectObjects().map(([ref, object]) => ({ ref, object }));
  const values = objects.flatMap(({ ref, object }) => inside(object).map((value) => ({ ref, value })));
  const dicts = values.flatMap(({ ref, value }) => (value instanceof PDFDict ? [{ ref, dict: value }] : []));
  return { raw: Buffer.from(bytes).toString('latin1'), doc, objects, values, dicts };
}

export const streamsOf = ({ objects }: PdfFile): { ref: PDFRef; stream: PDFRawStream }[] =>
  objects.flatMap(({ ref, object }) => (isRawStream(object) ? [{ ref, stream: object }] : []));

/** What stands under a key, references followed; undefined where nothing does. */
export const at = (file: PdfFile, dict: PDFDict, key: string): PDFObject | undefined => {
  const value = dict.get(PDFName.of(key));
  return value instanceof PDFRef ? file.doc.context.lookup(value) : value;
};

/** A name under a key, without its slash; undefined where there is none. */
export function nameAt(file: PdfFile, dict: PDFDict, key: string): string | undefined {
  const value = at(file, dict, key);
  return value instanceof PDFName ? value.decodeText() : undefined;
}

export const dictsOfType = (file: PdfFile, type: string): { ref: PDFRef; dict: PDFDict }[] => file.dicts.filter(({ dict }) => nameAt(file, dict, 'Type') === type);

/** Streams of XObjects and images of one kind: "Image", "Form". */
export const xObjects = (file: PdfFile, subtype: string): { ref: PDFRef; dict: PDFDict }[] =>
  file.dicts.filter(({ dict }) => nameAt(file, dict, 'Subtype') === subtype && nameAt(file, dict, 'Type') === 'XObject');

export const decoded = (stream: PDFRawStream): Uint8Array => decodePDFRawStream(stream).decode();

/** Every entry of a dictionary or list, references followed. */
export function listAt(file: PdfFile, dict: PDFDict, key: string): PDFObject[] {
  const value = at(file, dict, key);
  return value instanceof PDFArray ? value.asArray().map((entry) => (entry instanceof PDFRef ? file.doc.context.lookup(entry)! : entry)) : [];
}

export { isRawStream };
