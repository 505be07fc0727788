import jsQR from 'jsqr';
import { beforeAll, describe, expect, test } from 'vitest';
import { createHash } from 'node:crypto';
import { buildLabelsModel } from '../../../../app/report/build-labels-model.ts';
import { buildReceiptModel } from '../../../../app/report/build-receipt-model.ts';
import { MARGINS, PAGE_POINTS } from '../../../../main/print/paper.ts';
import { renderLabels } from '../../../../main/print/render-labels.ts';
import { renderReceipt } from '../../../../main/print/render-receipt.ts';
import { renderReport } from '../../../../main/print/render-report.ts';
import type { Enclosure } from '../../../../main/print/report/enclosure.ts';
import { foundTools, hasPreflight, hasTool, preflightFindings, runTool } from './outside-tools.ts';
import { filledRectangles, rasterise } from './rasterise.ts';
import { attachedTo, readPdf } from './read-pdf.ts';
import { sampleCase, sampleLaboratory } from './sample-case.ts';
import { sampleOfMany, sampleReport, sampleReport1 } from './sample-report.ts';

console.log(`Checked by pdf.js and, where they are on this machine, by: ${[...foundTools, ...(hasPreflight ? ['PDFBox preflight'] : [])].join(', ') || 'nothing else'}.`);

const sha256 = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');
// The library's typings describe its default export as a module object.
const decode = jsQR as unknown as (data: Uint8ClampedArray, width: number, height: number) => { data: string } | null;

const enclosure: Enclosure = {
  document: '{"schema":"sample"}',
  records: [
    { name: 'R5-emission (1).txt', mediaType: 'text/plain', photograph: false, description: 'Raw record of run R5', bytes: Buffer.from('532.1 17\n532.2 19\n') },
    { name: 'R6-σ spectrum.jdx', mediaType: 'chemical/x-jcamp-dx', photograph: false, description: 'Raw record of run R6', bytes: Buffer.alloc(70_000, 'absorbance ') },
    { name: 'photo-table.png', mediaType: 'image/png', photograph: true, description: 'Photograph', bytes: Buffer.from('not packed, as pictures are') },
    { name: 'R7-empty.txt', mediaType: 'text/plain', photograph: false, description: 'Raw record of run R7', bytes: Buffer.alloc(0) },
  ],
  signed: false,
};
const model = ((report) => ({
  ...report,
  sections: report.sections.map((part) => (part.section === 'raw-records' ? { ...part, records: part.records.map((record, i) => ({ ...record, attached: i !== 1 })) } : part)),
}))(sampleReport());

// The validator knows the first part of the standard only: it objects to what the third part allows, and to nothing else.
const ALLOWED_BY_THE_THIRD_PART = [/^1\.4\.7 .*EmbeddedFile/, /^1\.2\.9 .*EmbeddedFile/, /^3\.1\.11 .*CIDSet entry is missing/, /^2\.2\.2 .*Soft Mask/, /^7\.11\.2 .*part must be 1/];

describe('a report with what it encloses', () => {
  let pdf: Uint8Array;
  let raw: string;
  beforeAll(async () => {
    pdf = await renderReport(model, enclosure);
    raw = Buffer.from(pdf).toString('latin1');
  });

  test('says that it is PDF/A-3b, and says of itself in its metadata what its document information says', async () => {
    expect(raw.startsWith('%PDF-1.7\n%')).toBe(true);
    const xmp = Buffer.from(pdf).toString('utf8').match(/<x:xmpmeta[\s\S]*<\/x:xmpmeta>/)?.[0] ?? '';
    expect(xmp).toContain('<pdfaid:part>3</pdfaid:part><pdfaid:conformance>B</pdfaid:conformance>');
    const { info } = await readPdf(pdf);
    const inXmp = (tag: string): string => new RegExp(`<${tag}>(?:<rdf:(?:Alt|Seq)><rdf:li[^>]*>)?([^<]*)`).exec(xmp)![1]!.replaceAll('&amp;', '&');
    expect([inXmp('dc:title'), inXmp('dc:creator'), inXmp('dc:description'), inXmp('pdf:Producer'), inXmp('xmp:CreatorTool')])
      .toEqual([info['Title'], info['Author'], info['Subject'], info['Producer'], info['Creator']]);
    const asInfo = (instant: string): string => `D:${instant.replace(/[-:T]/g, '')}`;
    expect([asInfo(inXmp('xmp:CreateDate')), asInfo(inXmp('xmp:ModifyDate'))]).toEqual([info['CreationDate'], info['ModDate']]);
  });

  test('declares its colours by an embedded profile, and is known by what it says', () => {
    expect(raw).toMatch(/\/Type \/OutputIntent\n\/S \/GTS_PDFA1\n/);
    expect(raw.match(/\/OutputIntents \[\d+ 0 R\]/g)).toHaveLength(1);
    const id = sha256(enclosure.document).slice(0, 32);
    expect(raw).toContain(`/ID [<${id}> <${id}>]`);
    expect(raw).not.toMatch(/\/(JavaScript|Launch|Encrypt|DeviceCMYK|AcroForm)\b/);
  });

  test('another reader finds every file in it, byte for byte, under its name', async () => {
    const found = await attachedTo(pdf);
    const wanted: [string, Uint8Array][] = [['report.json', Buffer.from(enclosure.document)], ...enclosure.records.map(({ name, bytes }): [string, Uint8Array] => [name, bytes])];
    expect([...found.keys()].sort()).toEqual(wanted.map(([name]) => name).sort());
    for (const [name, bytes] of wanted) expect(sha256(found.get(name)!)).toBe(sha256(bytes));
  });

  test('each attached file belongs to the whole document, with its relation, media type and date', () => {
    const listed = /\/AF \[([^\]]*)\]/.exec(raw)![1]!.match(/\d+ 0 R/g)!;
    expect(listed).toHaveLength(5);
    const relations = listed.map((ref) => new RegExp(`\\n${ref.replace(' R', ' obj')}\\n<<\\n/Type /Filespec[\\s\\S]*?/AFRelationship /(\\w+)`).exec(raw)![1]);
    expect(relations).toEqual(['Alternative', 'Data', 'Data', 'Source', 'Data']);
    const files = [...raw.matchAll(/\/Type \/EmbeddedFile\n\/Subtype \/(\S+)\n\/Params <<\n\/Size (\d+)\n\/ModDate \(([^)]*)\)/g)];
    expect(files.map(([, type, size, date]) => [type, Number(size), date])).toEqual([
      ['application#2Fjson', enclosure.document.length, 'D:20261125101500Z'], ['text#2Fplain', 18, 'D:20261125101500Z'], ['chemical#2Fx-jcamp-dx', 70_000, 'D:20261125101500Z'],
      ['image#2Fpng', 27, 'D:20261125101500Z'], ['text#2Fplain', 0, 'D:20261125101500Z'],
    ]);
  });

  test('the cells that head a row or a column say so, and figures say what they show', async () => {
    const scopes = raw.match(/\/S \/TH\n(?:[^>]*\n)*?\/A <<\n\/O \/Table\n\/Scope \/(Row|Column)/g) ?? [];
    expect(scopes.length).toBe((raw.match(/\/S \/TH\n/g) ?? []).length);
    expect(scopes.length).toBeGreaterThan(20);
    for (const figure of raw.match(/\/S \/Figure\n[^>]*/g) ?? []) expect(figure).toContain('/Alt (');
    expect(raw).toContain('/DisplayDocTitle true');
    expect(raw).toContain('/Marked true');
  });

  test('headings come in order: none skips a level', async () => {
    const levels = (await readPdf(pdf)).roles.flat().filter((role) => /^H\d$/.test(role)).map((role) => Number(role.slice(1)));
    expect(levels[0]).toBe(1);
    levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
  });

  test('the page tells what travels with it and what does not, and the digest of report.json', async () => {
    const all = (await readPdf(pdf)).pages.join(' ');
    expect(all).toContain('attached to this PDF file, together with report.json, except the one marked “not attached”');
    expect(all.match(/not attached(?!”)/g)).toHaveLength(1);
    expect(all).toContain(`SHA-256 of the attached report.json, which holds what this report says (canonical JSON, RFC 8785): ${sha256(enclosure.document)}`);
  });

  test('the code on page 1 reads as number, day of issue and digest', async () => {
    const boxes = await filledRectangles(pdf, 0);
    const { width } = PAGE_POINTS.A4;
    const image = rasterise(boxes.filter((box) => box.width < 30 && box.height < 3), { left: width - MARGINS.right - 90, top: MARGINS.top + 20, width: 104, height: 104 }, 6);
    expect(decode(image.pixels, image.width, image.height)?.data).toBe(`S-2026-0088 revision 1, issued 2026-11-25, SHA-256 ${sha256(enclosure.document)}`);
  });

  test('the same content gives the same bytes', async () => {
    expect(sha256(await renderReport(model, enclosure))).toBe(sha256(pdf));
  });

  test.skipIf(!hasTool('qpdf'))('qpdf finds nothing to mend', () => {
    const { code, out } = runTool('qpdf', ['--check', 'report.pdf'], pdf);
    expect([code, /WARNING|ERROR/.test(out)]).toEqual([0, false]);
  });

  test.skipIf(!hasTool('pdffonts'))('every face is embedded, a subset, and knows its letters', () => {
    const rows = runTool('pdffonts', ['report.pdf'], pdf).out.trim().split('\n').slice(2);
    expect(rows.length).toBeGreaterThan(4);
    for (const row of rows) expect(row).toMatch(/ yes yes yes /);
  });

  test.skipIf(!hasTool('pdfdetach'))('pdfdetach gives the files back', () => {
    const { files } = runTool('pdfdetach', ['-saveall', 'report.pdf'], pdf);
    expect(files.get('report.json')?.toString('utf8')).toBe(enclosure.document);
    expect(sha256(files.get('R6-σ spectrum.jdx') ?? '')).toBe(sha256(enclosure.records[1]!.bytes));
  });

  test.skipIf(!hasPreflight)('a PDF/A validator objects to nothing but what the third part of the standard allows', () => {
    const findings = preflightFindings(pdf);
    expect(findings.some((line) => line.includes('part must be 1'))).toBe(true);
    expect(findings.filter((line) => !ALLOWED_BY_THE_THIRD_PART.some((pattern) => pattern.test(line)))).toEqual([]);
  }, 60_000);
});

test('a draft carries nothing inside and no code, and says that it will', async () => {
  const pdf = await renderReport(sampleReport({ draft: true, number: '', revision: 0, issued: '' }));
  expect((await attachedTo(pdf)).size).toBe(0);
  const { pages, alternatives } = await readPdf(pdf);
  expect(pages.join(' ')).toContain('They are attached to the report when it is issued.');
  expect(alternatives.filter((text) => text.includes('QR'))).toEqual([]);
});

test('a picture in printing inks is not drawn: the profile does not describe its colours', async () => {
  // The least of a JPEG that says “four components”: enough for the writer to know the kind.
  const inks = Buffer.from([0xff, 0xd8, 0xff, 0xee, 0, 4, 0, 0, 0xff, 0xc0, 0, 20, 8, 0, 1, 0, 1, 4, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0, 4, 0x11, 0, 0xff, 0xd9]);
  const items = sampleReport1().items.map((item) => ({ ...item, photographs: [{ caption: 'Inks', mediaType: 'image/jpeg', base64: inks.toString('base64'), sha256: sha256(inks) }] }));
  const pdf = await renderReport(sampleReport({ items }));
  expect(Buffer.from(pdf).toString('latin1')).not.toContain('DeviceCMYK');
  expect((await readPdf(pdf)).pages.join(' ')).toContain('picture can’t be drawn');
});

describe.each([
  ['a receipt', () => renderReceipt(buildReceiptModel(sampleLaboratory(), sampleCase(), null))],
  ['labels', () => renderLabels(buildLabelsModel(sampleLaboratory(), sampleCase()))],
  ['a report on many stones', () => renderReport(sampleOfMany(6))],
])('%s', (_, render) => {
  let pdf: Uint8Array;
  beforeAll(async () => { pdf = await render(); });

  test('is written in the same form', () => {
    const raw = Buffer.from(pdf).toString('latin1');
    expect(raw).toContain('<pdfaid:part>3</pdfaid:part>');
    expect(raw).toContain('/OutputIntents [');
  });

  test('its headings come in order', async () => {
    const levels = (await readPdf(pdf)).roles.flat().filter((role) => /^H\d$/.test(role)).map((role) => Number(role.slice(1)));
    levels.forEach((level, i) => expect(level - (levels[i - 1] ?? 0)).toBeLessThanOrEqual(1));
  });

  test.skipIf(!hasPreflight)('a PDF/A validator has no other objection', () => {
    const findings = preflightFindings(pdf);
    expect(findings.length).toBeGreaterThan(0);
    expect(findings.filter((line) => !ALLOWED_BY_THE_THIRD_PART.some((pattern) => pattern.test(line)))).toEqual([]);
  }, 60_000);
});
