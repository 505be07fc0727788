import { inflateSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import type { Drawing, Primitive } from '../../../../app/figure/drawing.ts';
import { drawDrawing, measureOnPaper } from '../../../../main/print/draw-drawing.ts';
import { Sheet } from '../../../../main/print/sheet.ts';
import { readPdf } from './read-pdf.ts';

const sheet = (): Sheet => new Sheet({ pageSize: 'A4', title: 't', author: 'a', subject: 's', language: 'en', createdAt: new Date(0), runningHead: 0, digest: '0'.repeat(64) });

/** The operators of the first page, as text. */
async function contentOf(primitives: readonly Primitive[]): Promise<string> {
  const page = sheet();
  drawDrawing(page, { width: 100, height: 50, primitives } satisfies Drawing, 40, 60);
  const raw = Buffer.from(await page.finish());
  for (let from = raw.indexOf('stream\n'); from >= 0; from = raw.indexOf('stream\n', from + 7)) {
    try {
      const text = inflateSync(raw.subarray(from + 7)).toString('latin1');
      if (text.includes('1 0 0 1 40 60 cm')) return text;
    } catch {
      // Not a compressed stream.
    }
  }
  throw new Error('no page content found');
}

describe('a drawing on paper', () => {
  test('a line is a stroke with its width and dash', async () => {
    const text = await contentOf([{ kind: 'line', x1: 1, y1: 2, x2: 30, y2: 2, ink: 'accent', width: 0.7, dash: [4, 3] }]);
    expect(text).toMatch(/\[4 3\] 0 d[\s\S]*0\.7 w[\s\S]*1 2 m\n30 2 l\nS/);
  });

  test('a path is drawn inside its clip only', async () => {
    const text = await contentOf([{ kind: 'path', points: [0, 0, 10, 5, 20, 0], ink: 'ink', width: 1, clip: { x: 0, y: 0, width: 15, height: 50 } }]);
    expect(text).toMatch(/0 0 15 50 re\nW n[\s\S]*0 0 m\n10 5 l\n20 0 l\nS\nQ/);
  });

  test('a path of one point draws nothing', async () => {
    expect(await contentOf([{ kind: 'path', points: [3, 3], ink: 'ink', width: 1, clip: { x: 0, y: 0, width: 1, height: 1 } }])).not.toContain(' m\n');
  });

  test('a rectangle takes a role or a colour of its own', async () => {
    const text = await contentOf([{ kind: 'rect', x: 0, y: 0, width: 2, height: 5, fill: '#ff0000' }, { kind: 'rect', x: 2, y: 0, width: 2, height: 5, fill: 'ink' }]);
    expect(text).toMatch(/1 0 0 scn\n0 0 2 5 re\nf/);
    expect((text.match(/ re\nf/g) ?? []).length).toBe(2);
  });

  test('text stands at its anchor', async () => {
    const page = sheet();
    const text = (anchor: 'start' | 'middle' | 'end', y: number): Primitive => ({ kind: 'text', x: 50, y, text: '737.9', font: 'mono', size: 8, ink: 'ink3', anchor });
    drawDrawing(page, { width: 100, height: 50, primitives: [text('start', 10), text('middle', 20), text('end', 30)] }, 0, 0);
    const width = measureOnPaper(page)('737.9', 'mono', 8);
    const raw = await page.finish();
    const { pages } = await readPdf(raw);
    expect(pages[0]).toBe('737.9 737.9 737.9');
    const content = Buffer.from(raw);
    const streams = [...content.toString('latin1').matchAll(/stream\n/g)].map((match) => match.index + 7);
    const drawn = streams.map((at) => { try { return inflateSync(content.subarray(at)).toString('latin1'); } catch { return ''; } }).find((one) => one.includes(' Tm'))!;
    const lefts = [...drawn.matchAll(/^1 0 0 1 ([\d.]+) [\d.]+ Tm$/gm)].map((match) => Number(match[1]));
    expect(lefts[0]! - lefts[1]!).toBeCloseTo(width / 2, 3);
    expect(lefts[0]! - lefts[2]!).toBeCloseTo(width, 3);
  });
});
