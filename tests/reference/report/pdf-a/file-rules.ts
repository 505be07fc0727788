import type { PDFRawStream} from '@cantoo/pdf-lib';
import { PDFArray, PDFHexString, PDFName, PDFNumber, PDFString, type PDFRef } from '@cantoo/pdf-lib';
import { at, listAt, streamsOf, type PdfFile } from './pdf-file.ts';
import { each, whether, type Rule } from './rule.ts';

const FILTERS = new Set(['ASCIIHexDecode', 'ASCII85Decode', 'FlateDecode', 'RunLengthDecode', 'CCITTFaxDecode', 'JBIG2Decode', 'DCTDecode', 'JPXDecode']);
const BOXES = ['MediaBox', 'CropBox', 'BleedBox', 'TrimBox', 'ArtBox'];

/** Where each object that is in use begins, by the cross-reference table as the bytes tell it. */
function placesOf(raw: string): { object: number; place: number }[] {
  const start = Number(/startxref\s+(\d+)\s+%%EOF\s*$/.exec(raw)?.[1] ?? Number.NaN);
  const lines = raw.slice(start).split(/\r?\n/);
  const places: { object: number; place: number }[] = [];
  let object = 0;
  for (const line of lines.slice(1)) {
    const section = /^(\d+) (\d+)$/.exec(line);
    const entry = /^(\d{10}) \d{5} ([nf]) ?$/.exec(line);
    if (section !== null) object = Number(section[1]);
    else if (entry === null) break;
    else {
      if (entry[2] === 'n') places.push({ object, place: Number(entry[1]) });
      object += 1;
    }
  }
  return places;
}

/** The bytes that follow a stream of the length that is stated for it. */
function afterStream({ raw }: PdfFile, place: number, length: number): string {
  const keyword = raw.indexOf('stream', place);
  const from = raw.startsWith('stream\r\n', keyword) ? keyword + 8 : keyword + 7;
  return raw.slice(from + length, from + length + 12);
}

function faultsOfStreams(file: PdfFile): string[] {
  const places = new Map(placesOf(file.raw).map(({ object, place }) => [object, place]));
  return streamsOf(file).flatMap(({ ref, stream }) => {
    const length = at(file, stream.dict, 'Length');
    const place = places.get(ref.objectNumber);
    if (!(length instanceof PDFNumber) || place === undefined) return [`${ref.toString()} states no length, or is not in the table`];
    return whether(/^(\r\n|\n|\r)endstream/.test(afterStream(file, place, length.asNumber())), `${ref.toString()} does not end after ${length.asNumber()} bytes`);
  });
}

function filtersOf(file: PdfFile, stream: PDFRawStream): string[] {
  const one = at(file, stream.dict, 'Filter');
  const all = one instanceof PDFArray ? one.asArray() : one === undefined ? [] : [one];
  return all.map((filter) => (filter instanceof PDFName ? filter.decodeText() : 'no name'));
}

const numbersIn = (file: PdfFile): { ref: PDFRef; n: number }[] => file.values.flatMap(({ ref, value }) => (value instanceof PDFNumber ? [{ ref, n: value.asNumber() }] : []));
const bytesOf = (value: PDFString | PDFHexString): number => value.asBytes().length;

/** Clause 6.1: how the file is written. */
export const FILE_RULES: readonly Rule[] = [
  { clause: '6.1.2', says: 'the header stands at the first byte, and is a version from 1.0 to 1.7 with a line end', faults: ({ raw }) => whether(/^%PDF-1\.[0-7](\r\n|\r|\n)/.test(raw), JSON.stringify(raw.slice(0, 12))) },
  { clause: '6.1.2', says: 'a comment of at least four bytes above 127 follows it', faults: ({ raw }) => whether(/^%PDF-1\.\d(\r\n|\r|\n)%[\x80-\xff]{4}/.test(raw), 'the second line is not such a comment') },
  {
    clause: '6.1.3', says: 'the trailer names the file by an ID', faults: ({ doc }) => {
      const id = doc.context.trailerInfo.ID;
      return whether(id instanceof PDFArray && id.size() === 2 && id.asArray().every((part) => (part instanceof PDFHexString || part instanceof PDFString) && bytesOf(part) > 0), 'there is none');
    },
  },
  { clause: '6.1.3', says: 'nothing is encrypted', faults: ({ doc }) => whether(doc.context.trailerInfo.Encrypt === undefined, 'the trailer has an Encrypt entry') },
  { clause: '6.1.3', says: 'nothing but a line end follows the last end-of-file marker', faults: ({ raw }) => whether(/^(\r\n|\r|\n)?$/.test(raw.slice(raw.lastIndexOf('%%EOF') + 5)), 'bytes follow it') },
  { clause: '6.1.4', says: 'one line end stands between xref and its section', faults: ({ raw }) => whether([...raw.matchAll(/(?<![a-z])xref(\s*)/g)].every(([, space]) => /^(\r\n|\r|\n)$/.test(space!)), 'other spacing') },
  {
    clause: '6.1.6', says: 'hexadecimal strings hold an even number of digits and nothing else',
    faults: (file) => each(file.values.flatMap(({ ref, value }) => (value instanceof PDFHexString ? [{ ref, digits: value.asString().replace(/\s/g, '') }] : [])), ({ digits }) => digits.length % 2 === 0 && /^[\da-f]*$/i.test(digits), ({ ref }) => ref.toString()),
  },
  { clause: '6.1.7', says: 'a stream is as long as it states, and its keyword stands on a line of its own', faults: faultsOfStreams },
  { clause: '6.1.7', says: 'no stream lies in another file', faults: (file) => each(streamsOf(file), ({ stream }) => ['F', 'FFilter', 'FDecodeParms'].every((key) => at(file, stream.dict, key) === undefined), ({ ref }) => ref.toString()) },
  { clause: '6.1.7', says: 'streams are packed in a way that is allowed, and not by LZW', faults: (file) => streamsOf(file).flatMap(({ ref, stream }) => each(filtersOf(file, stream), (name) => FILTERS.has(name), (name) => `${ref.toString()}: ${name}`)) },
  {
    clause: '6.1.9', says: 'numbers and keywords of an object stand apart by one space, and on lines of their own',
    faults: ({ raw }) => each(placesOf(raw), ({ object, place }) => new RegExp(`^[\\r\\n]${object} \\d+ obj(\\r\\n|\\r|\\n)`).test(raw.slice(place - 1, place + 40)) && /[\r\n]endobj[\r\n]/.test(raw.slice(place)), ({ object }) => `object ${object}`),
  },
  { clause: '6.1.13', says: 'integers fit 32 bits, and real numbers single precision', faults: (file) => each(numbersIn(file), ({ n }) => (Number.isInteger(n) ? n <= 2_147_483_647 && n >= -2_147_483_648 : Math.abs(n) <= 3.403e38 && Math.abs(n) >= 1.175e-38), ({ ref, n }) => `${ref.toString()}: ${n}`) },
  {
    clause: '6.1.13', says: 'no string has 32,767 bytes or more, no name more than 127',
    faults: (file) => each(file.values, ({ value }) => (value instanceof PDFName ? value.asBytes().length <= 127 : !(value instanceof PDFString || value instanceof PDFHexString) || bytesOf(value) < 32_767), ({ ref }) => ref.toString()),
  },
  { clause: '6.1.13', says: 'there are no more than 8,388,607 objects', faults: ({ objects }) => whether(objects.length <= 8_388_607, String(objects.length)) },
  {
    clause: '6.1.13', says: 'sides of pages measure 3 to 14,400 units',
    faults: (file) => file.doc.getPages().flatMap((page, i) => BOXES.flatMap((box) => {
      const [left, bottom, right, top] = listAt(file, page.node, box).map((side) => (side instanceof PDFNumber ? side.asNumber() : Number.NaN));
      return left === undefined ? [] : whether([right! - left, top! - bottom!].every((side) => side >= 3 && side <= 14_400), `${box} of page ${i + 1}`);
    })),
  },
];
