import { PROFILE_NAME, srgbProfile } from './srgb-profile.ts';

/** The parts of the library's document that its typings leave out. */
type Inner = {
  _root: { data: Record<string, unknown> };
  _id: Uint8Array;
  ref(data: Record<string, unknown>): PdfObject;
  _write(line: string): void;
};

/** An object of the file while it is written. Text in `data` is a name of the format; a `String` object is a text. */
export type PdfObject = { compress: boolean; end(content?: Uint8Array): void };

export const innerOf = (doc: PDFKit.PDFDocument): Inner => doc as unknown as Inner;

/** A text of the format: the library takes a plain string for a name. */
export const pdfText = (text: string): object => Object(text) as object;

/** Bytes of a file's identifier (ISO 32000-1, 14.4). */
const ID_BYTES = 16;

/** What PDF/A-3 (ISO 19005-3, 6.2.3) asks for beside its metadata: the colours' meaning, embedded. */
export function writeOutputIntent(doc: PDFKit.PDFDocument): void {
  const inner = innerOf(doc);
  const profile = inner.ref({ N: 3, Alternate: 'DeviceRGB' });
  profile.end(srgbProfile());
  const intent = inner.ref({
    Type: 'OutputIntent', S: 'GTS_PDFA1', OutputConditionIdentifier: pdfText(PROFILE_NAME), Info: pdfText(PROFILE_NAME), DestOutputProfile: profile,
  });
  intent.end();
  inner._root.data['OutputIntents'] = [intent];
}

/** Gives the file the identifier that follows from what it says: the same content, the same file. `digest`: hexadecimal digits, at least 32. */
export function writeFileId(doc: PDFKit.PDFDocument, digest: string): void {
  innerOf(doc)._id = Buffer.from(digest.slice(0, ID_BYTES * 2), 'hex');
}

/** A comment between the objects of the file (ISO 32000-1, 7.2.3). */
export const writeRemark = (doc: PDFKit.PDFDocument, remark: string): void => { innerOf(doc)._write(`% ${remark}`); };
