import { PDFBool, PDFDict, PDFDocument, PDFHexString, PDFName, PDFNumber, PDFRawStream, PDFString } from '@cantoo/pdf-lib';
import { beforeAll, describe, expect, test } from 'vitest';
import { buildLabelsModel } from '../../../../app/report/build-labels-model.ts';
import { buildReceiptModel } from '../../../../app/report/build-receipt-model.ts';
import { renderLabels } from '../../../../main/print/render-labels.ts';
import { renderReceipt } from '../../../../main/print/render-receipt.ts';
import { renderReport } from '../../../../main/print/render-report.ts';
import { sampleCase, sampleLaboratory } from '../../../unit/main/print/sample-case.ts';
import { sampleOfMany, sampleReport } from '../../../unit/main/print/sample-report.ts';
import { brokenBy } from './broken-by.ts';

const report = () => renderReport(sampleReport(), {
  document: '{"schema":"sample"}', signed: false,
  records: [
    { name: 'R5-σ emission.txt', mediaType: 'text/plain', photograph: false, description: 'Raw record of run R5', bytes: Buffer.from('532.1 17\n') },
    { name: 'photo-table.png', mediaType: 'image/png', photograph: true, description: 'Photograph', bytes: Buffer.from('a picture') },
  ],
});

describe('every rule of PDF/A-3b that can be told from objects, bytes and font programs (ISO 19005-3:2012, after the public validation profile), by a parser of others', () => {
  test.each([
    ['an issued report', report], ['a report on many stones', () => renderReport(sampleOfMany(6))],
    ['a receipt', () => renderReceipt(buildReceiptModel(sampleLaboratory(), sampleCase(), null))], ['labels', () => renderLabels(buildLabelsModel(sampleLaboratory(), sampleCase()))],
  ])('is kept by %s', async (_, render) => {
    expect(await brokenBy(await render())).toEqual([]);
  }, 60_000);
});

type Spoil = (doc: PDFDocument) => void;
const name = (text: string): PDFName => PDFName.of(text);
const inCatalog = (key: string, value: (doc: PDFDocument) => Parameters<PDFDict['set']>[1]): Spoil => (doc) => { doc.catalog.set(name(key), value(doc)); };
const onPage = (key: string, value: (doc: PDFDocument) => Parameters<PDFDict['set']>[1]): Spoil => (doc) => { doc.getPage(0).node.set(name(key), value(doc)); };

/** Changes every dictionary that says of itself what it is. */
const inAll = (type: string, change: (dict: PDFDict, doc: PDFDocument) => void): Spoil => (doc) => {
  for (const [, object] of doc.context.enumerateIndirectObjects()) {
    const dict = object instanceof PDFDict ? object : object instanceof PDFRawStream ? object.dict : undefined;
    if (dict?.get(name('Type')) === name(type)) change(dict, doc);
  }
};
const drawn = (content: string): Spoil => (doc) => { doc.getPage(0).node.set(name('Contents'), doc.context.register(doc.context.stream(content))); };
const inImages = (key: string, value: Parameters<PDFDict['set']>[1]): Spoil => inAll('XObject', (dict) => { dict.set(name(key), value); });
const withState = (state: Record<string, string>): Spoil => (doc) => { doc.context.register(doc.context.obj({ Type: 'ExtGState', ...state })); };
const annotated = (annotation: Record<string, string | number>): Spoil => (doc) => { doc.getPage(0).node.set(name('Annots'), doc.context.obj([doc.context.obj({ Type: 'Annot', Rect: [0, 0, 9, 9], ...annotation })])); };
const inXmp = (from: string | RegExp, to: string): Spoil => (doc) => {
  const kept = doc.context.lookup(doc.catalog.get(name('Metadata'))) as PDFRawStream;
  doc.catalog.set(name('Metadata'), doc.context.register(doc.context.stream(Buffer.from(Buffer.from(kept.contents).toString('utf8').replace(from, to)), { Type: 'Metadata', Subtype: 'XML' })));
};

/** A sheet is no validator until it is seen to find things: each of these breaks one rule, and the clause beside it must complain. */
const SPOILT: readonly (readonly [clause: string, what: string, spoil: Spoil])[] = [
  ['6.1.3', 'no name of the file', (doc) => { delete doc.context.trailerInfo.ID; }],
  ['6.1.6', 'half a byte', inCatalog('Lang', () => PDFHexString.of('616'))],
  ['6.1.7', 'a stream elsewhere', inAll('EmbeddedFile', (dict) => { dict.set(name('F'), PDFString.of('elsewhere')); })],
  ['6.1.7', 'LZW', inAll('EmbeddedFile', (dict) => { dict.set(name('Filter'), name('LZWDecode')); })],
  ['6.1.13', 'an integer too large', inCatalog('Piece', () => PDFNumber.of(2_147_483_648))],
  ['6.1.13', 'a string too long', inCatalog('Piece', () => PDFString.of('a'.repeat(32_767)))],
  ['6.1.13', 'a name too long', inCatalog('Piece', () => name('a'.repeat(128)))],
  ['6.1.13', 'a page too wide', onPage('MediaBox', (doc) => doc.context.obj([0, 0, 14_401, 800]))],
  ['6.1.13', 'states nested too deep', drawn(`${'q '.repeat(29)}${'Q '.repeat(29)}`)],
  ['6.2.2', 'an operator of nobody', drawn('BX 1 shine EX')],
  ['6.2.3', 'two profiles', inCatalog('OutputIntents', (doc) => { const list = doc.catalog.get(name('OutputIntents')) as unknown as { asArray(): Parameters<PDFDict['set']>[1][] }; return doc.context.obj([...list.asArray(), ...list.asArray()] as never); })],
  ['6.2.3', 'a profile of a scanner', inAll('OutputIntent', (dict, doc) => { const profile = Buffer.alloc(128); profile.write('scnrRGB ', 12, 'latin1'); dict.set(name('DestOutputProfile'), doc.context.register(doc.context.stream(profile))); })],
  ['6.2.4.3', 'printing inks', drawn('0 0 0 1 k 0 0 10 10 re f')],
  ['6.2.4.4', 'a spot colour', inImages('ColorSpace', name('Separation'))],
  ['6.2.5', 'a transfer function', withState({ TR: 'Identity' })],
  ['6.2.6', 'an intent of its own', drawn('/Vivid ri')],
  ['6.2.8', 'a smoothed image', inImages('Interpolate', PDFBool.True)],
  ['6.2.8', 'another image instead', inImages('Alternates', name('Other'))],
  ['6.2.9', 'PostScript', (doc) => { doc.context.register(doc.context.obj({ Type: 'XObject', Subtype: 'PS' })); }],
  ['6.2.10', 'a blend mode of its own', withState({ BM: 'Sparkle' })],
  ['6.2.11.2', 'a font without a name', inAll('Font', (dict) => { dict.delete(name('BaseFont')); })],
  ['6.2.11.3', 'a font without its map', inAll('Font', (dict) => { dict.delete(name('CIDToGIDMap')); })],
  ['6.2.11.4', 'a font left outside', inAll('FontDescriptor', (dict) => { dict.delete(name('FontFile2')); })],
  ['6.2.11.4', 'a font that lists some of its glyphs', inAll('FontDescriptor', (dict) => { dict.set(name('CIDSet'), name('Some')); })],
  ['6.2.11.5', 'other widths than the program has', inAll('Font', (dict) => { dict.delete(name('W')); })],
  ['6.3.1', 'a film', annotated({ Subtype: 'Movie', F: 4, AP: 'x' })],
  ['6.3.2', 'a link that is not printed', annotated({ Subtype: 'Link', F: 0 })],
  ['6.3.3', 'a stamp without a look', annotated({ Subtype: 'Stamp', F: 4 })],
  ['6.4', 'a form to fill in', inCatalog('AcroForm', (doc) => doc.context.obj({}))],
  ['6.5.1', 'a script', inCatalog('OpenAction', (doc) => doc.context.obj({ S: 'JavaScript' }))],
  ['6.5.2', 'a page that acts by itself', onPage('AA', (doc) => doc.context.obj({}))],
  ['6.6.2.1', 'no metadata', (doc) => { doc.catalog.delete(name('Metadata')); }],
  ['6.6.2.1', 'metadata that state their encoding', inXmp('<?xpacket begin="', '<?xpacket encoding="x" begin="')],
  ['6.6.2.1', 'metadata that are no XML', inXmp('</pdfaid:part>', '')],
  ['6.6.2.3', 'a property of nobody', inXmp('</pdfaid:part>', '</pdfaid:part><pdfaid:sparkle>3</pdfaid:sparkle>')],
  ['6.6.4', 'another part', inXmp('<pdfaid:part>3', '<pdfaid:part>2')],
  ['6.6.4', 'another level', inXmp('<pdfaid:conformance>B', '<pdfaid:conformance>X')],
  ['6.6.4', 'another prefix', inXmp(/pdfaid:/g, 'archive:')],
  ['6.8', 'a file of no kind', inAll('EmbeddedFile', (dict) => { dict.delete(name('Subtype')); })],
  ['6.8', 'a file with one name', inAll('Filespec', (dict) => { dict.delete(name('UF')); })],
  ['6.8', 'a file of no relation', inAll('Filespec', (dict) => { dict.delete(name('AFRelationship')); })],
  ['6.8', 'a file that belongs to nothing', (doc) => { doc.catalog.delete(name('AF')); }],
  ['6.9', 'layers', inCatalog('OCProperties', (doc) => doc.context.obj({}))],
  ['6.10', 'steps of a presentation', onPage('PresSteps', (doc) => doc.context.obj({}))],
  ['6.11', 'demands on a reader', inCatalog('Requirements', (doc) => doc.context.obj([]))],
];

/** The same, where the parser would mend it while writing: bytes are changed instead. */
const SPOILT_BYTES: readonly (readonly [clause: string, what: string, spoil: (raw: string) => string])[] = [
  ['6.1.2', 'an older header', (raw) => raw.replace('%PDF-1.7', '%PDF-2.0')],
  ['6.1.2', 'no bytes above 127 in the second line', (raw) => raw.replace(/(%PDF-1\.7\n%)..../, '$1abcd')],
  ['6.1.3', 'bytes after the end', (raw) => `${raw}\nmore`],
  ['6.1.4', 'two line ends after xref', (raw) => { const place = raw.lastIndexOf('\nxref\n'); return `${raw.slice(0, place)}\nxref\n\n${raw.slice(place + 6)}`; }],
  ['6.1.7', 'a stream longer than it states', (raw) => raw.replace('\nendstream', 'x\nendstream')],
  ['6.1.9', 'the head of an object on one line with what follows', (raw) => raw.replace(/\n(\d+) 0 obj\n/, '\n$1 0 obj ')],
];

describe('and a file that breaks one is found out', () => {
  let whole: Uint8Array;
  beforeAll(async () => { whole = await report(); });

  test('written anew by the parser it is as good as before', async () => {
    const doc = await PDFDocument.load(whole, { updateMetadata: false });
    expect(await brokenBy(await doc.save({ useObjectStreams: false, updateFieldAppearances: false }))).toEqual([]);
  });

  test.each(SPOILT)('%s: %s', async (clause, _, spoil) => {
    const doc = await PDFDocument.load(whole, { updateMetadata: false });
    spoil(doc);
    const broken = await brokenBy(await doc.save({ useObjectStreams: false, updateFieldAppearances: false }));
    expect(broken.map((line) => line.split(' ')[0])).toContain(clause);
  });

  test.each(SPOILT_BYTES)('%s: %s', async (clause, _, spoil) => {
    const raw = Buffer.from(whole).toString('latin1');
    const spoilt = spoil(raw);
    expect(spoilt).not.toBe(raw);
    const broken = await brokenBy(Buffer.from(spoilt, 'latin1'));
    expect(broken.map((line) => line.split(' ')[0])).toContain(clause);
  });
});
