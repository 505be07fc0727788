import { expect, test } from 'vitest';
import { figureModel } from '../../../../app/figure/figure-model.ts';
import { dashOf, FIGURE_STYLE } from '../../../../app/figure/figure-style.ts';
import { spectrumFigure } from '../../../../app/figure/spectrum-figure.ts';
import type { SpectrumFigureInput } from '../../../../app/figure/spectrum-figure.ts';
import type { PeakResult } from '../../../../app/spectra/analysis.ts';

const x = Array.from({ length: 4000 }, (_, i) => 410 + i * 0.11);
const y = x.map((nm) => 1000 + 26_000 / (1 + ((nm - 737.9) / 2.5) ** 2));
const peak = (position: number, centre: string | null, more: Partial<PeakResult> = {}): PeakResult =>
  ({ position, unit: 'nm', height: 1, fwhm: 2, prominence: 1, snr: 40, standardError: null, centre, offset: 0, ambiguousWith: [], sidebandOf: null, ...more });
const RAMAN = { expectedNm: 428.02, foundNm: 428.01, shiftCm1: 1332.2, present: true, state: 'present', detectionLimit: 5 } as const;
const input = (more: Partial<SpectrumFigureInput> = {}): SpectrumFigureInput => ({ curves: [{ label: 'R5', x, y, xUnit: 'nm' }], axis: 'nm', laserNm: 404.93, yUnit: 'counts', ...more });

test('a figure passes its own schema and frames the curve', () => {
  const figure = figureModel.parse(spectrumFigure(input({ peaks: [peak(737.9, 'SIV')], diamondRaman: RAMAN })));
  expect(figure).toMatchObject({ xUnit: 'nm', xLabel: 'wavelength in air, nm', yLabel: 'counts', yRange: [0, 30_000], visibleStrip: true });
  expect(figure.lines.map((line) => [line.name, line.position, line.ink])).toEqual([['diamond Raman', '428.01', 'accent'], ['SiV⁻', '737.9', 'cvd']]);
});

test('the accent is the diamond line’s alone', () => {
  const figure = spectrumFigure(input({ peaks: [peak(415.2, 'N3'), peak(575, 'NV0'), peak(737.9, 'SIV'), peak(883.9, 'NI883')], diamondRaman: RAMAN, xRange: [400, 900] }));
  expect(figure.lines.filter((line) => line.ink === 'accent').map((line) => line.name)).toEqual(['diamond Raman']);
  expect(figure.lines.filter((line) => line.ink === 'natural').map((line) => line.name)).toEqual(['N3']);
});

test('a doublet becomes one label, sidebands and unnamed peaks none', () => {
  const figure = spectrumFigure(input({ peaks: [peak(596.5, 'CVD596'), peak(597.2, 'CVD597'), peak(766, null), peak(684, 'NV-', { sidebandOf: 'NV-' })] }));
  expect(figure.lines.map((line) => [line.name, line.position])).toEqual([['CVD pair', '596.5/597.2']]);
});

test('centres that cannot be told apart are both named and colour nothing', () => {
  const [line] = spectrumFigure(input({ peaks: [peak(738.9, 'SIV', { ambiguousWith: ['GR1'] })] })).lines;
  expect(line).toMatchObject({ name: 'SiV⁻ or GR1', ink: 'ink' });
});

test('a diamond line that was not found is dashed where it is expected', () => {
  const [line] = spectrumFigure(input({ diamondRaman: { ...RAMAN, foundNm: null, shiftCm1: null, present: false, state: 'masked' } })).lines;
  expect(line).toMatchObject({ name: 'diamond Raman expected', position: '428.02', dash: true });
});

test('wavenumbers fall from left to right, lines move with the axis', () => {
  const figure = spectrumFigure(input({ axis: 'cm-1', peaks: [peak(737.9, 'SIV')] }));
  expect(figure.xRange[0]).toBeGreaterThan(figure.xRange[1]);
  expect(figure.lines[0]!.at).toBeCloseTo(13_548, 0);
  expect(figure.visibleStrip).toBe(false);
});

test('a Raman-shift axis without a laser shows nothing wrong', () => {
  const figure = spectrumFigure(input({ axis: 'raman-shift', laserNm: undefined, peaks: [peak(737.9, 'SIV')] }));
  expect(figure.curves).toEqual([expect.objectContaining({ x: [], y: [] })]);
  expect(figure.lines).toEqual([]);
  expect(figureModel.safeParse(figure).success).toBe(true);
});

test('the Raman-shift axis puts the diamond line at its measured shift', () => {
  const [line] = spectrumFigure(input({ axis: 'raman-shift', diamondRaman: RAMAN })).lines;
  expect(line).toMatchObject({ at: 1332.2, position: '1332.2' });
});

test('a zoom takes its ordinate from what it shows', () => {
  const figure = spectrumFigure(input({ xRange: [500, 450] }));
  expect(figure.xRange).toEqual([450, 500]);
  expect(figure.yRange[1]).toBeLessThan(1100);
});

test.each([
  ['no curve', []],
  ['an empty curve', [{ label: '', x: [], y: [], xUnit: 'nm' as const }]],
  ['one point', [{ label: '', x: [500], y: [0], xUnit: 'nm' as const }]],
  ['a constant', [{ label: '', x: [500, 501], y: [7, 7], xUnit: 'nm' as const }]],
  ['nothing finite', [{ label: '', x: [500, 501], y: [Number.NaN, Number.POSITIVE_INFINITY], xUnit: 'nm' as const }]],
])('%s gives a drawable figure', (_, curves) => {
  const figure = figureModel.parse(spectrumFigure(input({ curves })));
  expect(figure.xRange[0]).toBeLessThan(figure.xRange[1]);
  expect(figure.yRange[0]).toBeLessThan(figure.yRange[1]);
});

test('a long curve is thinned, and says the same twice', () => {
  const many = Float64Array.from({ length: 200_000 }, (_, i) => 400 + i * 0.002);
  const figure = spectrumFigure(input({ curves: [{ label: '', x: many, y: many.map((v) => Math.sin(v)), xUnit: 'nm' }] }));
  expect(figure.curves[0]!.x.length).toBeLessThanOrEqual(3200);
  expect(spectrumFigure(input())).toEqual(spectrumFigure(input()));
});

test('a curve and twenty laid over it each get a stroke of their own, and keep it in what is stored', () => {
  const curves = Array.from({ length: 21 }, (_, i) => ({ label: `R${i}`, x, y, xUnit: 'nm' as const }));
  const figure = figureModel.parse(spectrumFigure(input({ curves, columns: 10 })));
  expect(new Set(figure.curves.map((curve) => `${curve.ink} ${String(dashOf(curve, FIGURE_STYLE))}`)).size).toBe(21);
  for (const pattern of FIGURE_STYLE.patterns) expect(pattern.reduce((sum, length) => sum + length, 0)).toBeLessThanOrEqual(FIGURE_STYLE.legendStroke);
});
