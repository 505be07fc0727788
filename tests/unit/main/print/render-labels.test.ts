import jsQR from 'jsqr';
import { describe, expect, test } from 'vitest';
import { buildLabelsModel } from '../../../../app/report/build-labels-model.ts';
import { qrMatrix, QUIET_ZONE } from '../../../../main/print/blocks/qr-code.ts';
import { LABEL_GRIDS, renderLabels } from '../../../../main/print/render-labels.ts';
import { PAGE_POINTS } from '../../../../main/print/paper.ts';
import { filledRectangles, rasterise } from './rasterise.ts';
import { readPdf } from './read-pdf.ts';
import { sampleCase, sampleItem, sampleLaboratory } from './sample-case.ts';

const model = buildLabelsModel(sampleLaboratory(), sampleCase());
// The library's typings describe its default export as a module object.
const decode = jsQR as unknown as (data: Uint8ClampedArray, width: number, height: number) => { data: string } | null;

test('the modules of a code read as the number', () => {
  const matrix = qrMatrix('C-2026-0117/A');
  const scale = 4;
  const side = (matrix.size + 2 * QUIET_ZONE) * scale;
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      const row = Math.floor(y / scale) - QUIET_ZONE;
      const column = Math.floor(x / scale) - QUIET_ZONE;
      if (row >= 0 && column >= 0 && row < matrix.size && column < matrix.size && matrix.isDark(row, column)) pixels.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    }
  }
  expect(decode(pixels, side, side)?.data).toBe('C-2026-0117/A');
});

describe('the printed sheet', () => {
  test('each code on the page reads as its item’s number', async () => {
    const bytes = await renderLabels(model);
    const boxes = await filledRectangles(bytes, 0);
    expect(boxes.length).toBeGreaterThan(300);
    const grid = LABEL_GRIDS.A4;
    const read = model.labels.map((_, index) => {
      const left = grid.left + index * grid.columnStep;
      const image = rasterise(boxes, { left, top: grid.top, width: grid.width, height: grid.height }, 4);
      return decode(image.pixels, image.width, image.height)?.data;
    });
    expect(read).toEqual(['C-2026-0117/A', 'C-2026-0117/B', 'C-2026-0117/C']);
  });

  test('number, description, seal and the mark of invented data stand beside it', async () => {
    const [page = ''] = (await readPdf(await renderLabels(model))).pages;
    for (const text of ['C-2026-0117/A', 'loose stone, 0.412 ct', 'seal 20931', 'jewellery, eleven stones, 14.321 g', 'lot of small stones, 340 stones', 'invented data']) expect(page).toContain(text);
  });

  test('more labels than a sheet holds go on to the next', async () => {
    const many = buildLabelsModel(sampleLaboratory({ isDemonstration: false }), sampleCase(Array.from({ length: 50 }, (_, i) => sampleItem(`I${i}`))));
    const pdf = await readPdf(await renderLabels(many));
    expect(pdf.pages).toHaveLength(3);
    expect(pdf.pages[1]).toContain('C-2026-0117/I24');
    expect(pdf.pages[0]).toContain('21 Nov 2026');
  });

  test('a case without items gives a page that says so', async () => {
    const pdf = await readPdf(await renderLabels({ ...model, labels: [] }));
    expect(pdf.pages).toHaveLength(1);
    expect(pdf.pages[0]).toContain('holds no item yet');
  });

  test.each(['A4', 'Letter'] as const)('the grid for %s lies on its paper', (size) => {
    const grid = LABEL_GRIDS[size];
    const paper = PAGE_POINTS[size];
    expect(grid.left + (grid.columns - 1) * grid.columnStep + grid.width).toBeLessThanOrEqual(paper.width);
    expect(grid.top + (grid.rows - 1) * grid.rowStep + grid.height).toBeLessThanOrEqual(paper.height);
  });

  test('the same case gives the same bytes', async () => {
    expect(Buffer.from(await renderLabels(model)).equals(Buffer.from(await renderLabels(model)))).toBe(true);
  });
});
