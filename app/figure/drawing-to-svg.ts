import { assertNever } from '../result.ts';
import { isRgb } from './drawing.ts';
import type { Drawing, FontRole, PathPrimitive, Primitive, Rect } from './drawing.ts';
import type { Theme } from './inks.ts';

export type SvgOptions = {
  readonly theme: Theme;
  /** CSS font-family lists by role. */
  readonly fonts: Readonly<Record<FontRole, string>>;
  /** Read out by screen readers, and the tooltip. */
  readonly title: string;
  /** What the figure shows, for those who cannot see it. */
  readonly description: string;
  /** Paints the theme's sheet behind the drawing; without it the SVG is transparent. */
  readonly background?: boolean;
};

/** Families as the program bundles them, with what a bare system falls back to. */
export const SVG_FONTS: SvgOptions['fonts'] = {
  mono: "'IBM Plex Mono', ui-monospace, 'DejaVu Sans Mono', monospace",
  sans: "'IBM Plex Sans', system-ui, 'DejaVu Sans', sans-serif",
  sans500: "'IBM Plex Sans', system-ui, 'DejaVu Sans', sans-serif",
};

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
/** Control characters that XML 1.0 forbids, and halves of surrogate pairs. */
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
/** Text as XML may carry it; what XML forbids becomes the replacement character. */
export const escapeXml = (text: string): string => text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"']/g, (c) => ESCAPES[c]!);

const px = (v: number): string => String(Math.round(v * 100) / 100);
const dashes = (dash: readonly number[] | undefined): string => (dash === undefined ? '' : ` stroke-dasharray="${dash.map(px).join(' ')}"`);

function pathData(path: PathPrimitive): string {
  const pairs: string[] = [];
  for (let i = 0; i + 1 < path.points.length; i += 2) pairs.push(`${px(path.points[i]!)} ${px(path.points[i + 1]!)}`);
  return pairs.length === 0 ? '' : `M${pairs.join('L')}`;
}

function element(primitive: Primitive, options: SvgOptions, clipId: (clip: Rect) => string): string {
  const { inks } = options.theme;
  switch (primitive.kind) {
    case 'line':
      return `<line x1="${px(primitive.x1)}" y1="${px(primitive.y1)}" x2="${px(primitive.x2)}" y2="${px(primitive.y2)}" stroke="${inks[primitive.ink]}" stroke-width="${px(primitive.width)}"${dashes(primitive.dash)}/>`;
    case 'path':
      return `<path d="${pathData(primitive)}" fill="none" stroke="${inks[primitive.ink]}" stroke-width="${px(primitive.width)}" stroke-linejoin="round"${dashes(primitive.dash)} clip-path="url(#${clipId(primitive.clip)})"/>`;
    case 'rect':
      return `<rect x="${px(primitive.x)}" y="${px(primitive.y)}" width="${px(primitive.width)}" height="${px(primitive.height)}" fill="${isRgb(primitive.fill) ? primitive.fill : inks[primitive.fill]}"/>`;
    case 'text': {
      const weight = primitive.font === 'sans500' ? ' font-weight="500"' : '';
      return `<text x="${px(primitive.x)}" y="${px(primitive.y)}" font-family="${escapeXml(options.fonts[primitive.font])}" font-size="${px(primitive.size)}"${weight} fill="${inks[primitive.ink]}" text-anchor="${primitive.anchor}">${escapeXml(primitive.text)}</text>`;
    }
    default:
      return assertNever(primitive);
  }
}

/** A drawing as a standalone SVG 1.1 document. The same drawing and options give the same text. */
export function drawingToSvg(drawing: Drawing, options: SvgOptions): string {
  const clips: Rect[] = [];
  const clipId = (clip: Rect): string => {
    let at = clips.findIndex((c) => c.x === clip.x && c.y === clip.y && c.width === clip.width && c.height === clip.height);
    if (at < 0) at = clips.push(clip) - 1;
    return `plot-${at}`;
  };
  const body = drawing.primitives.map((primitive) => element(primitive, options, clipId));
  const size = `${px(drawing.width)} ${px(drawing.height)}`;
  const ground = options.background === true ? [`<rect width="${px(drawing.width)}" height="${px(drawing.height)}" fill="${options.theme.grounds.sheet}"/>`] : [];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${px(drawing.width)}" height="${px(drawing.height)}" viewBox="0 0 ${size}" role="img" aria-labelledby="title desc">`,
    `<title id="title">${escapeXml(options.title)}</title>`,
    `<desc id="desc">${escapeXml(options.description)}</desc>`,
    ...(clips.length === 0 ? [] : ['<defs>', ...clips.map((c, i) => `<clipPath id="plot-${i}"><rect x="${px(c.x)}" y="${px(c.y)}" width="${px(c.width)}" height="${px(c.height)}"/></clipPath>`), '</defs>']),
    ...ground,
    ...body,
    '</svg>',
    '',
  ].join('\n');
}
