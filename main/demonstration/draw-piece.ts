import type { GLOW_COLOURS, GLOW_STRENGTHS } from '../../app/domain/observation.ts';
import { seededRandom } from '../../app/spectra/simulate/seeded-random.ts';
import { arrangeStones, type Spot } from './arrange-stones.ts';
import { distanceIn, outlineOf } from './stone-outline.ts';
import type { Arrangement } from './scenario-schema.ts';
import { eachPoint, wordSize } from './small-letters.ts';
import type { Picture } from './write-png.ts';

export type Glow = { readonly colour: (typeof GLOW_COLOURS)[number]; readonly strength: (typeof GLOW_STRENGTHS)[number] };
export type PieceLight = 'white' | 'long-wave' | 'short-wave' | 'polarised';
export type Piece = {
  readonly arrangement: Arrangement;
  readonly stones: readonly { readonly shape: string; readonly glow: Glow }[];
  readonly light: PieceLight;
  /** Fixes how far stones of one look differ in brightness. */
  readonly seed: number;
};

type Rgb = readonly [number, number, number];

const WIDTH = 600;
const HEIGHT = 400;
/** Width ÷ height of a drawn picture. */
export const PICTURE_ASPECT = WIDTH / HEIGHT;
const DARK: Rgb = [9, 10, 15];
const PAPER: Rgb = [238, 235, 228];
const PENCIL: Rgb = [74, 82, 99];
const STAMP: Readonly<Record<'dark' | 'paper', Rgb>> = { dark: [150, 152, 158], paper: [138, 59, 46] };

const COLOURS: Readonly<Record<Glow['colour'], Rgb>> = {
  none: [60, 62, 70], blue: [72, 120, 255], 'greenish-blue': [70, 200, 215], green: [90, 220, 110], 'yellow-green': [180, 225, 90], yellow: [245, 220, 90],
  orange: [255, 125, 45], red: [235, 60, 50], pink: [245, 140, 180], violet: [150, 100, 245], white: [225, 228, 240], uneven: [150, 160, 200],
};
/** Brightness against the strongest, and of what scatters from a stone that does not glow. Invented. */
const BRIGHTNESS: Readonly<Record<Glow['strength'], number>> = { inert: 0, 'very-weak': 0.13, weak: 0.26, moderate: 0.46, strong: 0.76, 'very-strong': 1 };
const SCATTER = 0.05;

/** A canvas that adds light or lays ink. */
function createCanvas(ground: Rgb) {
  const rgb = new Float64Array(WIDTH * HEIGHT * 3);
  for (let i = 0; i < rgb.length; i += 1) rgb[i] = ground[i % 3]!;
  const inside = (x: number, y: number): boolean => x >= 0 && y >= 0 && x < WIDTH && y < HEIGHT;
  return {
    rgb,
    add(x: number, y: number, colour: Rgb, share: number): void {
      if (!inside(x, y)) return;
      for (let c = 0; c < 3; c += 1) rgb[(y * WIDTH + x) * 3 + c] = rgb[(y * WIDTH + x) * 3 + c]! + colour[c]! * share;
    },
    ink(x: number, y: number, colour: Rgb, share: number): void {
      if (!inside(x, y)) return;
      for (let c = 0; c < 3; c += 1) {
        const at = (y * WIDTH + x) * 3 + c;
        rgb[at] = rgb[at]! * (1 - share) + colour[c]! * share;
      }
    },
  };
}
type Canvas = ReturnType<typeof createCanvas>;

/** Every point of the square around a stone, with its distance from the middle: 1 on the outline. */
function around({ x, y, r }: Spot, shape: string, reach: number, paint: (px: number, py: number, distance: number, angle: number) => void): void {
  const [cx, cy, radius] = [x * WIDTH, y * WIDTH, r * WIDTH];
  const outline = outlineOf(shape);
  for (let py = Math.floor(cy - reach * radius); py <= cy + reach * radius; py += 1) {
    for (let px = Math.floor(cx - reach * radius); px <= cx + reach * radius; px += 1) {
      const distance = distanceIn(outline, (px - cx) / radius, (py - cy) / radius);
      if (distance <= reach) paint(px, py, distance, Math.atan2(py - cy, px - cx));
    }
  }
}

function glowing(canvas: Canvas, spot: Spot, shape: string, glow: Glow, flicker: number): void {
  const brightness = (glow.colour === 'none' ? 0 : BRIGHTNESS[glow.strength]) * flicker;
  around(spot, shape, 2.2, (x, y, d, angle) => {
    const facets = 0.88 + 0.12 * Math.cos(8 * angle + 3 * d);
    const body = d < 1 ? (1 - 0.3 * d * d) * facets : 0.45 * Math.exp(-(((d - 1) / 0.3) ** 2));
    canvas.add(x, y, COLOURS[glow.colour], brightness * body);
    if (d < 1) canvas.add(x, y, COLOURS.none, SCATTER * facets);
  });
}

/** Outline, table and facets in pencil. */
function sketched(canvas: Canvas, spot: Spot, shape: string): void {
  const line = 1.1 / (spot.r * WIDTH);
  const soft = (offset: number): number => Math.max(0, 1 - Math.abs(offset) / (1.6 * line));
  around(spot, shape, 1.2, (x, y, d, angle) => {
    const wedge = ((angle + 2 * Math.PI) % (Math.PI / 4)) - Math.PI / 8;
    const table = (0.55 * Math.cos(Math.PI / 8)) / Math.cos(wedge);
    if (d < 1) canvas.ink(x, y, [252, 252, 252], 0.7);
    const spoke = d > table && d < 1 ? soft(Math.min(Math.abs(Math.abs(wedge) - Math.PI / 8), 1) * d) : 0;
    canvas.ink(x, y, PENCIL, Math.min(1, soft(d - 1) + 0.8 * soft(d - table) + 0.6 * spoke));
  });
}

function write(canvas: Canvas, word: string, left: number, top: number, scale: number, colour: Rgb): void {
  eachPoint(word, (px, py) => {
    for (let dy = 0; dy < scale; dy += 1) for (let dx = 0; dx < scale; dx += 1) canvas.ink(Math.round(left) + px * scale + dx, Math.round(top) + py * scale + dy, colour, 0.85);
  });
}

/** Numbers as in the labels, away from the middle. Stones of a lot have none: they lie as they fell. */
function numbered(canvas: Canvas, arrangement: Arrangement, spots: readonly Spot[], colour: Rgb): void {
  if (spots.length < 2 || arrangement === 'scatter') return;
  spots.forEach(({ x, y, r }, index) => {
    const word = String(index + 1);
    const { width, height } = wordSize(word);
    const dx = x - 1 / 2;
    const dy = y - 1 / 3;
    const far = Math.hypot(dx, dy);
    const [ux, uy] = far < 0.02 ? [0.72, -0.7] : [dx / far, dy / far];
    const reach = r + 0.03;
    write(canvas, word, (x + ux * reach) * WIDTH - width, (y + uy * reach) * WIDTH - height, 2, colour);
  });
}

/** Rounded and kept within 0 to 255, as that kind of array does. */
const toBytes = (canvas: Canvas): Uint8Array => new Uint8Array(new Uint8ClampedArray(canvas.rgb).buffer);

/** A picture of a piece with its stones, numbered as their labels, and INVENTED written across the lower left. */
export function drawPiece({ arrangement, stones, light, seed }: Piece): Picture {
  const paper = light === 'white' || light === 'polarised';
  const canvas = createCanvas(paper ? PAPER : DARK);
  const spots = arrangeStones(arrangement, stones.length);
  const random = seededRandom(seed);
  spots.forEach((spot, index) => {
    const { shape, glow } = stones[index]!;
    if (paper) sketched(canvas, spot, shape);
    else glowing(canvas, spot, shape, glow, random.between(0.85, 1.1));
  });
  const stamp = STAMP[paper ? 'paper' : 'dark'];
  numbered(canvas, arrangement, spots, paper ? PENCIL : stamp);
  write(canvas, 'INVENTED', 16, HEIGHT - 16 - 3 * wordSize('INVENTED').height, 3, stamp);
  return { width: WIDTH, height: HEIGHT, rgb: toBytes(canvas) };
}
