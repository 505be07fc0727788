import { createHash } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { canonicalJson } from '../../../../app/custody/canonical-json.ts';
import { renderReport } from '../../../../main/print/render-report.ts';
import { readPdf, squeezed, type ReadPdf } from './read-pdf.ts';
import { sectionOf } from '../../../../app/report/report-model.ts';
import { sampleOfLongNames, sampleOfMany, sampleReport, sampleReport1 } from './sample-report.ts';

describe('a report on one stone', () => {
  const model = sampleReport();
  let pdf: ReadPdf;
  let all: string;
  beforeAll(async () => {
    pdf = await readPdf(await renderReport(model));
    all = pdf.pages.join(' ');
  });

  test('carries number, revision and page of pages on every page', () => {
    expect(pdf.pages).toHaveLength(4);
    pdf.pages.forEach((page, index) => {
      expect(page).toContain('S-2026-0088, revision 1');
      expect(page).toContain(`page ${index + 1} of ${pdf.pages.length}`);
      expect(page).toContain('This report shall not be reproduced except in full.');
      expect(page).toContain('Invented demonstration data');
    });
  });

  test('opens with the laboratory, the opinion marked as one, and who stands behind it', () => {
    const [first = ''] = pdf.pages;
    for (const text of ['Saltmarsh Gem Laboratory', 'Diamond screening report', 'Issued 25 November 2026 for Harrow & Pell', 'as received',
      'Opinion of the examiners, stone A-3', 'Laboratory-grown diamond – CVD growth characteristics', 'Concluded by M. Okafor-Lindqvist on 25 Nov 2026, confirmed by T. Brambilla']) {
      expect(first).toContain(text);
    }
  });

  test('says what was found, set aside, not tested, with which instruments and within which limits', () => {
    for (const text of ['Findings', 'R6 Infrared', 'no nitrogen above 4 ppm', 'Strong for CVD growth: F2, F3.', 'Listed, does not count: F6.', 'Set aside', 'Stray light of the room lamp',
      'Not tested', 'Crossed polarisers: no time before the due date', 'Spectrometer 2', 'in order, checked', 'Scope and limits', 'does not value']) {
      expect(all).toContain(text);
    }
  });

  test('prints signatures, items with photographs, the custody log and every digit of each raw record', () => {
    for (const text of ['Signatures', 'Second person, 25 Nov 2026', 'Items received', '0.412 ct', '1 200 EUR', 'Table up, white light', 'picture can’t be drawn', 'Custody log', '20 Nov 2026 09:10']) {
      expect(all).toContain(text);
    }
    for (const record of sectionOf(model, 'raw-records')!.records) expect(all).toContain(record.sha256);
  });

  test('ends with an end mark and the digest of its content', () => {
    const digest = createHash('sha256').update(canonicalJson(model), 'utf8').digest('hex');
    expect(pdf.pages.at(-1)).toContain('End of report S-2026-0088, revision 1.');
    expect(pdf.pages.at(-1)).toContain(digest);
    expect(pdf.pages[0]).toContain(`digest ${digest.slice(0, 4)} ${digest.slice(4, 8)} ${digest.slice(8, 12)}`);
  });

  test('never promises certainty', () => {
    expect(all).not.toMatch(/\b(certified|certificate|guaranteed|genuine)\b/i);
  });

  test('has title, author, language, bookmarks and a structure with alternative texts', () => {
    expect(pdf.info).toMatchObject({ Title: 'Diamond screening report S-2026-0088, revision 1', Author: 'Saltmarsh Gem Laboratory', CreationDate: 'D:20261125101500Z' });
    expect(pdf.language).toBe('en');
    expect(pdf.bookmarks).toEqual(['Opinion', 'Client and work', 'Results', 'Methods and instruments', 'Scope and limits', 'Signatures', 'Items received', 'Item A, loose stone', 'Custody log', 'Raw records']);
    expect(pdf.roles[0]).toEqual(expect.arrayContaining(['H1', 'H2', 'P', 'Table', 'TR', 'TH', 'TD', 'Figure']));
    expect(pdf.alternatives).toContain(sectionOf(model, 'results')!.stones[0]!.figures[0]!.alt);
  });

  test('draws the figure’s named lines as text, not as a picture', () => {
    for (const text of ['diamond Raman', 'CVD pair', '596.5/597.2', 'wavelength in air, nm']) expect(pdf.pages[0]).toContain(text);
  });
});

test('the same model gives the same bytes, another model other ones', async () => {
  const first = await renderReport(sampleReport());
  const second = await renderReport(sampleReport());
  const other = await renderReport(sampleReport({ revision: 2 }));
  expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
  expect(Buffer.from(other).equals(Buffer.from(first))).toBe(false);
});

test('only embedded faces are used, and no standard font is named', async () => {
  const raw = Buffer.from(await renderReport(sampleReport())).toString('latin1');
  expect(raw).not.toMatch(/Helvetica|Times-Roman|Courier/);
  const fonts = raw.match(/\/BaseFont \/[^\s]+/g) ?? [];
  expect(fonts.length).toBeGreaterThan(4);
  for (const font of fonts) expect(font).toMatch(/\/[A-Z]{6}\+(Spectral|IBMPlex)/);
  expect((raw.match(/\/FontFile2/g) ?? []).length).toBe(new Set(fonts).size);
});

test('a draft says so on every page and in its end mark, and has no number', async () => {
  const pdf = await readPdf(await renderReport(sampleReport({ draft: true, number: '', revision: 0, issued: '' })));
  for (const page of pdf.pages) expect(page).toContain('draft, not issued');
  expect(pdf.info).toMatchObject({ Title: 'Diamond screening report, draft' });
  expect(pdf.pages[0]).toContain('Draft for Harrow & Pell, not issued.');
  expect(pdf.pages.at(-1)).toContain('End of draft.');
});

test('Letter paper is Letter paper', async () => {
  const raw = Buffer.from(await renderReport(sampleReport({ pageSize: 'Letter' }))).toString('latin1');
  expect(new Set(raw.match(/\/MediaBox \[[^\]]+\]/g))).toEqual(new Set(['/MediaBox [0 0 612 792]']));
});

test('texts with marks of markup stay texts in the metadata', async () => {
  const raw = Buffer.from(await renderReport(sampleReport({ laboratory: { name: 'A & B <Gems>', address: '', zone: 'UTC', logo: null } }))).toString('utf8');
  expect(raw).toContain('<rdf:li>A &amp; B &lt;Gems&gt;</rdf:li>');
});

describe('a report on many stones', () => {
  test('forty stones with six findings each are drawn in less than five seconds, each on the page that the overview names', async () => {
    const model = sampleOfMany(40);
    const started = performance.now();
    const bytes = await renderReport(model);
    expect(performance.now() - started).toBeLessThan(5000);
    const pdf = await readPdf(bytes);
    expect(pdf.pages[0]).toContain('the 40 stones described here');
    const overview = [...pdf.lines[0]!, ...pdf.lines[1]!, ...pdf.lines[2]!];
    for (const stone of sectionOf(model, 'results')!.stones) {
      const page = pdf.pages.findIndex((text) => text.includes(`Stone ${stone.label}, mounted`) && text.includes('Findings'));
      expect(page).toBeGreaterThan(0);
      expect(overview.find((line) => line.startsWith(`${stone.label} mounted`))).toMatch(new RegExp(` ${page + 1}$`));
      expect(pdf.bookmarks).toContain(`Stone ${stone.label}`);
    }
  });

  test('the head of a table that goes on is repeated on the next page', async () => {
    const pdf = await readPdf(await renderReport(sampleOfMany(40)));
    const custody = pdf.pages.filter((page) => page.includes('tested, run R5'));
    expect(custody.length).toBeGreaterThan(1);
    for (const page of custody) expect(page).toContain('When Item What Who Weight Digest');
  });
});

describe('awkward contents', () => {
  let pdf: ReadPdf;
  let all: string;
  beforeAll(async () => {
    pdf = await readPdf(await renderReport(sampleOfLongNames()));
    all = pdf.pages.join(' ');
  });

  test('names in Latin, Greek and Cyrillic letters are printed', () => {
    expect(all).toContain('Łódź–Đakovo Ľudovít Štúr');
    expect(all).toContain('Σοφία Παπαδοπούλου');
    expect(squeezed(all)).toContain('АлександраЩербакова-Ковальчук');
  });

  test('letters that no face holds are replaced where one sees it, and named', () => {
    expect(all).toContain('[?][?]');
    expect(all).toContain('U+5B9D, U+77F3');
  });

  test('the laboratory’s name stands whole on the first page and shortened on the others, a long fact is printed whole', () => {
    expect(squeezed(pdf.pages[0]!)).toContain('TeachingCollectionoftheInventedHarbourProvinceofSaltmarsh,DepartmentofScreening');
    expect(pdf.pages[1]).toMatch(/Łódź[^\n]*…/);
    expect(squeezed(all).match(/oneofwhichhadbeenreplaced/g)!.length).toBeGreaterThanOrEqual(4);
  });

  test('what is missing is said', () => {
    for (const text of ['No conclusion has been recorded for this stone.', 'No conclusion recorded', 'Not confirmed by a second person.', 'Departs from what the rules propose', 'No findings were accepted',
      'Every test that is possible for this stone was done.', 'Nobody has signed this report.', 'No instrument was used.', 'The custody ledger has no entry', 'No instrument file belongs to this report.', 'not recorded']) {
      expect(all).toContain(text);
    }
  });
});

test('a row taller than a page is divided and loses no line', async () => {
  const words = Array.from({ length: 4000 }, (_, i) => `w${i}`).join(' ');
  const [stone] = sampleReport1().stones;
  const pdf = await readPdf(await renderReport(sampleReport({ stones: [{ ...stone!, findings: [{ ...stone!.findings[0]!, statement: words }] }] })));
  const found = new Set(pdf.pages.join(' ').match(/\bw\d+\b/g));
  expect(found.size).toBe(4000);
});

test('a report without stones says that nothing was tested', async () => {
  const pdf = await readPdf(await renderReport(sampleReport({ stones: [], items: [] })));
  expect(pdf.pages.join(' ')).toContain('No stone has been tested.');
  expect(pdf.pages.join(' ')).toContain('No item is described.');
});

test('an item’s heading, its facts and its first photographs share a page, wherever the page ends', async () => {
  const limit = 'Origin is not stated where the findings do not suffice, and no single finding decides.';
  for (const lines of [0, 6, 12, 18, 24, 30, 36, 42]) {
    const { pages } = await readPdf(await renderReport(sampleReport({ limits: Array.from({ length: lines }, () => limit) })));
    const withHeading = pages.filter((page) => page.includes('Item A, loose stone'));
    expect(withHeading).toHaveLength(1);
    expect(withHeading[0], `${lines} lines above`).toContain('Table up, white light');
    expect(withHeading[0], `${lines} lines above`).toContain('Items received');
  }
});
