import { expect, test } from 'vitest';
import type { ReportModel } from '../../../../app/report/report-model.ts';
import { renderReport } from '../../../../main/print/render-report.ts';
import { readPdf } from '../../../unit/main/print/read-pdf.ts';
import { sampleReport } from '../../../unit/main/print/sample-report.ts';

function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** Ranges from which letters are drawn: control signs, Latin, combining marks, Greek, Cyrillic, Hebrew, Arabic, punctuation, Chinese, private use, emoji. */
const RANGES: readonly (readonly [number, number])[] = [
  [0x00, 0x1f], [0x20, 0x7e], [0xa0, 0x24f], [0x300, 0x36f], [0x370, 0x3ff], [0x400, 0x52f], [0x590, 0x6ff], [0x2000, 0x22ff], [0x4e00, 0x4eff], [0xe000, 0xe0ff], [0x1f300, 0x1f6ff],
];

function oddText(random: () => number): string {
  const length = Math.floor(random() ** 3 * 400);
  return Array.from({ length }, () => {
    const [from, to] = RANGES[Math.floor(random() * RANGES.length)]!;
    return random() < 0.15 ? ' ' : String.fromCodePoint(from + Math.floor(random() * (to - from + 1)));
  }).join('');
}

/** Fields whose values are not free text. */
const FIXED = new Set(['schema', 'section', 'kind', 'language', 'pageSize', 'issuedAt', 'id', 'strength', 'supports', 'ink', 'base64', 'mediaType', 'xUnit', 'sha256', 'hash']);

function bend<T>(value: T, random: () => number, key = ''): T {
  if (typeof value === 'string') return (FIXED.has(key) ? value : oddText(random)) as T;
  if (Array.isArray(value)) return value.map((inner: unknown) => bend(inner, random, key)) as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, bend(inner, random, name)])) as T;
}

test.each(Array.from({ length: 5 }, (_, seed) => seed))('a report whose every text is odd is drawn and can be read, seed %i', async (seed) => {
  const model: ReportModel = bend(sampleReport({ pageSize: seed % 2 === 0 ? 'A4' : 'Letter' }), seeded(seed + 1));
  const pdf = await readPdf(await renderReport(model));
  expect(pdf.pages.length).toBeGreaterThan(1);
  pdf.pages.forEach((page, index) => expect(page.replace(/\s/g, '')).toContain(`page${index + 1}of${pdf.pages.length}`));
  expect(pdf.pages.join(' ')).toContain('could not be printed');
});
