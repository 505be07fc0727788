import { createHash } from 'node:crypto';
import { innerOf, pdfText } from './archive-form.ts';

/** How an attached file stands to the pages (ISO 19005-3, Annex E; ISO 32000-2, 7.11.3). */
export type Relationship = 'Source' | 'Data' | 'Alternative' | 'Supplement';

export type Attachment = {
  /** File name without a path, once in a document. */
  readonly name: string;
  readonly mediaType: string;
  readonly description: string;
  readonly relationship: Relationship;
  readonly bytes: Uint8Array;
  readonly modifiedAt: Date;
  /** False where packing gains nothing, as for photographs. */
  readonly packed?: boolean;
  /** True where the bytes are filled in when the file is whole: they then stand in it as they are, once. */
  readonly filledLater?: boolean;
};

/** A name of the format: everything but plain letters, digits and a few signs as #xx (ISO 32000-1, 7.3.5). */
const pdfName = (text: string): string => text.replace(/[^A-Za-z0-9.+-]/g, (sign) => [...Buffer.from(sign, 'utf8')].map((byte) => `#${byte.toString(16).toUpperCase().padStart(2, '0')}`).join(''));

/** Letters that old readers show; the whole name stands beside it. */
const plainName = (name: string): string => name.normalize('NFKD').replace(/[^\x20-\x7e]/g, '_').replace(/[()\\]/g, '_');

/** Attaches files to the whole document, in their order. Call it when every page is written. */
export function attachFiles(doc: PDFKit.PDFDocument, files: readonly Attachment[]): void {
  const inner = innerOf(doc);
  const listed = files.map((file) => {
    const filledLater = file.filledLater ?? false;
    const embedded = inner.ref({
      Type: 'EmbeddedFile', Subtype: pdfName(file.mediaType),
      // The format's checksum (MD5, for readers that look for slips); for bytes that come later there is none.
      Params: { Size: file.bytes.byteLength, ModDate: file.modifiedAt, ...(filledLater ? {} : { CheckSum: createHash('md5').update(file.bytes).digest() }) },
    });
    embedded.compress = !filledLater && (file.packed ?? true);
    embedded.end(file.bytes);
    const specification = inner.ref({
      Type: 'Filespec', F: pdfText(plainName(file.name)), UF: pdfText(file.name), Desc: pdfText(file.description),
      AFRelationship: file.relationship, EF: { F: embedded, UF: embedded },
    });
    specification.end();
    return specification;
  });
  if (listed.length === 0) return;
  files.forEach((file, index) => (doc as unknown as { addNamedEmbeddedFile(name: string, ref: unknown): void })
    // The list of names is sorted by the reader's rules: a number before the name keeps both orders the same.
    .addNamedEmbeddedFile(`${String(index + 1).padStart(4, '0')} ${plainName(file.name)}`, listed[index]));
  inner._root.data['AF'] = listed;
}
