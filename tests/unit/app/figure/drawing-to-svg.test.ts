import { expect, test } from 'vitest';
import type { Drawing } from '../../../../app/figure/drawing.ts';
import { drawingToSvg, escapeXml, SVG_FONTS } from '../../../../app/figure/drawing-to-svg.ts';
import { THEMES } from '../../../../app/figure/inks.ts';

const clip = { x: 10, y: 10, width: 80, height: 40 };
const DRAWING: Drawing = {
  width: 100, height: 60,
  primitives: [
    { kind: 'rect', x: 10, y: 50, width: 2, height: 5, fill: '#00ff00' },
    { kind: 'line', x1: 20, y1: 10, x2: 20, y2: 50, ink: 'accent', width: 1, dash: [4, 3] },
    { kind: 'path', points: [10, 50, 50.123, 12, 90, 50], ink: 'ink', width: 1.3, clip },
    { kind: 'path', points: [], ink: 'ink', width: 1.3, clip },
    { kind: 'text', x: 24, y: 9, text: '<b> & "R5"', font: 'sans500', size: 11.5, ink: 'cvd', anchor: 'start' },
  ],
};
const options = { theme: THEMES.light, fonts: SVG_FONTS, title: 'A & B', description: 'one line at 20' };

test('a drawing becomes a standalone document', () => {
  expect(drawingToSvg(DRAWING, { ...options, background: true })).toMatchInlineSnapshot(`
    "<?xml version="1.0" encoding="UTF-8"?>
    <svg xmlns="http://www.w3.org/2000/svg" width="100" height="60" viewBox="0 0 100 60" role="img" aria-labelledby="title desc">
    <title id="title">A &amp; B</title>
    <desc id="desc">one line at 20</desc>
    <defs>
    <clipPath id="plot-0"><rect x="10" y="10" width="80" height="40"/></clipPath>
    </defs>
    <rect width="100" height="60" fill="#fcfaf5"/>
    <rect x="10" y="50" width="2" height="5" fill="#00ff00"/>
    <line x1="20" y1="10" x2="20" y2="50" stroke="#27508f" stroke-width="1" stroke-dasharray="4 3"/>
    <path d="M10 50L50.12 12L90 50" fill="none" stroke="#1c222d" stroke-width="1.3" stroke-linejoin="round" clip-path="url(#plot-0)"/>
    <path d="" fill="none" stroke="#1c222d" stroke-width="1.3" stroke-linejoin="round" clip-path="url(#plot-0)"/>
    <text x="24" y="9" font-family="&#39;IBM Plex Sans&#39;, system-ui, &#39;DejaVu Sans&#39;, sans-serif" font-size="11.5" font-weight="500" fill="#6a3d9c" text-anchor="start">&lt;b&gt; &amp; &quot;R5&quot;</text>
    </svg>
    "
  `);
});

test('inks follow the theme, data colours do not', () => {
  const dark = drawingToSvg(DRAWING, { ...options, theme: THEMES.dark });
  expect(dark).toContain(THEMES.dark.inks.accent);
  expect(dark).not.toContain(THEMES.light.inks.accent);
  expect(dark).toContain('#00ff00');
});

test('text cannot leave its element, and forbidden characters are replaced', () => {
  expect(escapeXml(`</text><script>'`)).toBe('&lt;/text&gt;&lt;script&gt;&#39;');
  expect(escapeXml('a\u0000b\ud800c')).toBe('a\ufffdb\ufffdc');
  expect(escapeXml('😀é')).toBe('😀é');
});
