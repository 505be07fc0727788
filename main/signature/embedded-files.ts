import { inflateSync } from 'node:zlib';

/** A file attached to a PDF, as it was found in the file's bytes. */
export type EmbeddedFile = {
  /** Where its stream begins. */
  readonly at: number;
  /** Unpacked; null where that is not possible. */
  readonly bytes: Uint8Array | null;
};

/** What a packed attachment may grow to: more than a casebook keeps of one file, so that a trap does not fill the memory. */
const LARGEST = 256 * 1024 * 1024;
/** Length of a stream's dictionary that is looked at. */
const DICTIONARY = 4096;

const KIND = '/EmbeddedFile';

/** Where a stream's bytes begin and end: by its stated length where that fits, else by the word that ends it. */
function streamAt(pdf: Buffer, from: number, dictionary: string): { start: number; end: number } | null {
  let start = from;
  if (pdf[start] === 0x0d) start += 1;
  if (pdf[start] === 0x0a) start += 1;
  const stated = /\/Length (\d{1,10})(?! +\d+ +R)/.exec(dictionary)?.[1];
  if (stated !== undefined) {
    const end = start + Number(stated);
    if (/^\s{0,2}endstream/.test(pdf.toString('latin1', end, end + 11))) return { start, end };
  }
  const word = pdf.indexOf('endstream', start);
  if (word < 0) return null;
  const end = pdf[word - 1] === 0x0a ? (pdf[word - 2] === 0x0d ? word - 2 : word - 1) : word;
  return end < start ? null : { start, end };
}

function unpack(packed: Uint8Array, dictionary: string): Uint8Array | null {
  if (!dictionary.includes('/Filter')) return packed;
  if (!/\/Filter *(\[ *)?\/FlateDecode/.test(dictionary) || dictionary.includes('/DecodeParms')) return null;
  try {
    return inflateSync(packed, { maxOutputLength: LARGEST });
  } catch {
    return null;
  }
}

/**
 * Every attached file in the bytes of a PDF, whoever wrote it last. Looks at the bytes alone and not at the file's own directories,
 * so that a damaged or joined file still shows what is in it. Never throws.
 */
export function embeddedFiles(file: Uint8Array): EmbeddedFile[] {
  const pdf = Buffer.from(file.buffer, file.byteOffset, file.byteLength);
  const found: EmbeddedFile[] = [];
  for (let at = pdf.indexOf(KIND); at >= 0; at = pdf.indexOf(KIND, at + KIND.length)) {
    // "/EmbeddedFiles" is the list of their names.
    if (pdf[at + KIND.length] === 0x73) continue;
    const word = pdf.indexOf('stream', at);
    if (word < 0 || word - at > DICTIONARY) continue;
    const open = pdf.lastIndexOf(' obj', at);
    const dictionary = pdf.toString('latin1', Math.max(open, at - DICTIONARY, 0), word);
    if (dictionary.includes('endobj')) continue;
    const place = streamAt(pdf, word + 'stream'.length, dictionary);
    if (place === null) continue;
    found.push({ at: place.start, bytes: unpack(pdf.subarray(place.start, place.end), dictionary) });
    at = Math.max(at, place.end - KIND.length);
  }
  return found;
}
