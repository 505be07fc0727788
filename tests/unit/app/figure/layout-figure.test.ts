import { expect, test } from 'vitest';
import type { Primitive, TextPrimitive } from '../../../../app/figure/drawing.ts';
import { pxToX, xToPx } from '../../../../app/figure/axis-scale.ts';
import type { FigureModel } from '../../../../app/figure/figure-model.ts';
import { layoutFigure } from '../../../../app/figure/layout-figure.ts';
import { seeded } from './seeded.ts';

/** A stand-in for a typeface: every character as wide, names a little wider than numbers. */
const measureText = (text: string, font: string, size: number): number => [...text].length * size * (font === 'mono' ? 0.6 : 0.55);

const line = (at: number, name: string, ink: 'ink' | 'natural' | 'cvd' | 'accent' = 'ink'): FigureModel['lines'][number] => ({ at, name, position: at.toFixed(1), ink });
const MODEL: FigureModel = {
  xUnit: 'nm', xLabel: 'wavelength in air, nm', yLabel: 'counts', xRange: [410, 850], yRange: [0, 30_000], visibleStrip: true,
  curves: [{ label: 'R5', ink: 'ink', dash: false, x: [410, 500, 738, 850], y: [1000, 1200, 27_000, 900] }],
  lines: [line(428, 'diamond Raman', 'accent'), line(575, 'NV⁰'), line(597, 'CVD pair', 'cvd'), line(637.3, 'NV⁻'), line(737.9, 'SiV⁻', 'cvd')],
};

const texts = (primitives: readonly Primitive[]): TextPrimitive[] => primitives.filter((p) => p.kind === 'text');

function box(t: TextPrimitive): { left: number; right: number; top: number; bottom: number } {
  const width = measureText(t.text, t.font, t.size);
  const left = t.x - (t.anchor === 'end' ? width : t.anchor === 'middle' ? width / 2 : 0);
  return { left, right: left + width, top: t.y - t.size * 0.7, bottom: t.y };
}

/** Pairs of texts whose boxes overlap. */
function overlaps(primitives: readonly Primitive[]): string[] {
  const all = texts(primitives);
  const out: string[] = [];
  all.forEach((a, i) => {
    for (const b of all.slice(i + 1)) {
      const [p, q] = [box(a), box(b)];
      // Superscripts belong to the text beside them.
      if (a.size !== b.size && Math.abs(p.right - q.left) < 1e-6) continue;
      if (p.left < q.right - 0.01 && q.left < p.right - 0.01 && p.top < q.bottom - 0.01 && q.top < p.bottom - 0.01) out.push(`${a.text} / ${b.text}`);
    }
  });
  return out;
}

test('no text touches another, over random figures and sizes', () => {
  const random = seeded(11);
  for (let round = 0; round < 600; round++) {
    const count = Math.floor(random() * 14);
    const lines = Array.from({ length: count }, (_, i) => line(410 + random() * 440, `name ${i}`.slice(0, 1 + Math.floor(random() * 12))));
    const curves = Array.from({ length: 1 + Math.floor(random() * 6) }, (_, i) => ({ ...MODEL.curves[0]!, label: `curve of run ${i} `.repeat(1 + Math.floor(random() * 3)) }));
    const yRange: [number, number] = [0, 10 ** (random() * 9 - 4)];
    const surface = { width: 220 + random() * 1000, height: 160 + random() * 500, measureText };
    const { drawing } = layoutFigure({ ...MODEL, lines, curves, yRange }, surface);
    expect(overlaps(drawing.primitives), `round ${round}: ${JSON.stringify(surface)}`).toEqual([]);
    for (const t of texts(drawing.primitives)) {
      expect(box(t).left, t.text).toBeGreaterThanOrEqual(-0.01);
      expect(box(t).right, t.text).toBeLessThanOrEqual(surface.width + 0.01);
      expect(box(t).bottom, t.text).toBeLessThanOrEqual(surface.height);
    }
  }
});

test('large counts are written in thousands', () => {
  const { drawing } = layoutFigure(MODEL, { width: 900, height: 420, measureText });
  const written = texts(drawing.primitives).map((t) => t.text);
  expect(written).toEqual(expect.arrayContaining(['10', '3', 'counts', '30', '25']));
  expect(written).not.toContain('30000');
});

test('lines without room are counted in words', () => {
  const lines = Array.from({ length: 12 }, (_, i) => line(570 + i, `a rather long name ${i}`));
  const { drawing, unlabelled } = layoutFigure({ ...MODEL, lines }, { width: 480, height: 200, measureText });
  expect(unlabelled.length).toBeGreaterThan(0);
  expect(texts(drawing.primitives).map((t) => t.text)).toContain(`+${unlabelled.length} more lines`);
});

test('the diamond line keeps its label longest', () => {
  const lines = [...Array.from({ length: 12 }, (_, i) => line(430 + i, `name ${i}`, 'cvd')), line(428, 'diamond Raman', 'accent')];
  const { unlabelled } = layoutFigure({ ...MODEL, lines }, { width: 260, height: 160, measureText });
  expect(unlabelled).not.toContain(12);
});

test('the strip is coloured inside the visible only', () => {
  const rects = layoutFigure({ ...MODEL, xRange: [300, 1000] }, { width: 900, height: 420, measureText }).drawing.primitives.filter((p) => p.kind === 'rect');
  const { plot } = layoutFigure({ ...MODEL, xRange: [300, 1000] }, { width: 900, height: 420, measureText });
  for (const rect of rects) {
    const nm = pxToX(rect.x + rect.width / 2, [300, 1000], plot);
    expect(rect.fill === 'line', `${nm}`).toBe(nm < 379 || nm > 781);
  }
  expect(layoutFigure({ ...MODEL, visibleStrip: false }, { width: 900, height: 420, measureText }).drawing.primitives.some((p) => p.kind === 'rect')).toBe(false);
});

test('a falling axis draws high wavenumbers on the left', () => {
  const model: FigureModel = { ...MODEL, xUnit: 'cm-1', xRange: [4000, 600], visibleStrip: false, lines: [], curves: [{ ...MODEL.curves[0]!, x: [600, 4000], y: [0, 1] }] };
  const { plot } = layoutFigure(model, { width: 700, height: 300, measureText });
  expect(xToPx(4000, model.xRange, plot)).toBeCloseTo(plot.x, 9);
  expect(pxToX(xToPx(1332, model.xRange, plot), model.xRange, plot)).toBeCloseTo(1332, 6);
});

test.each([[1, 1], [40, 30], [100, 60], [5000, 20]])('a surface of %d × %d does not break', (width, height) => {
  for (const p of layoutFigure(MODEL, { width, height, measureText }).drawing.primitives) {
    for (const value of Object.values(p)) if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  }
});

test('the same model and surface give the same drawing', () => {
  const surface = { width: 640, height: 360, measureText };
  expect(layoutFigure(MODEL, surface)).toEqual(layoutFigure(MODEL, surface));
});

test('the places of the curves’ names cover their texts', () => {
  const curves = ['R5', 'R6 emission', 'R7'].map((label) => ({ ...MODEL.curves[0]!, label }));
  const { drawing, legend } = layoutFigure({ ...MODEL, curves }, { width: 900, height: 420, measureText });
  expect(legend.map((place) => place.curve)).toEqual([0, 1, 2]);
  for (const place of legend) {
    const text = texts(drawing.primitives).find((t) => t.text === curves[place.curve]!.label)!;
    expect(box(text).left).toBeGreaterThan(place.x);
    expect(box(text).right).toBeLessThanOrEqual(place.x + place.width + 0.01);
    expect(box(text).top).toBeGreaterThanOrEqual(place.y);
    expect(box(text).bottom).toBeLessThanOrEqual(place.y + place.height);
  }
  expect(layoutFigure(MODEL, { width: 900, height: 420, measureText }).legend).toEqual([]);
});
