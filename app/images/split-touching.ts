import type { Region } from './label-regions.ts';

export type Disc = { readonly x: number; readonly y: number; readonly radius: number };

/** Two middles belong to one stone where the way between them never narrows below this share of the smaller one's half width (judgement). */
const WAIST = 0.8;
/** A middle is looked for among cells at least this share of the widest half width. */
const LEAST_MIDDLE = 0.45;

/** A region in a frame of its own, one empty cell wider on every side. */
type Frame = { readonly left: number; readonly top: number; readonly width: number; readonly cells: Int32Array; readonly depth: Float32Array };

function frameOf({ cells }: Region, gridWidth: number): Frame {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const cell of cells) {
    const x = cell % gridWidth;
    const y = (cell - x) / gridWidth;
    left = Math.min(left, x); right = Math.max(right, x); top = Math.min(top, y); bottom = Math.max(bottom, y);
  }
  const width = right - left + 3;
  const framed = cells.map((cell) => (Math.floor(cell / gridWidth) - top + 1) * width + (cell % gridWidth) - left + 1).sort();
  return { left: left - 1, top: top - 1, width, cells: framed, depth: depths(framed, width, bottom - top + 3) };
}

/** Distance of each cell to the nearest one outside, chamfer 3-4 (Borgefors 1986), in cells; 0 outside. */
function depths(cells: Int32Array, width: number, height: number): Float32Array {
  const depth = new Float32Array(width * height);
  for (const cell of cells) depth[cell] = Infinity;
  const relax = (cell: number, side: number): void => {
    depth[cell] = Math.min(depth[cell]!, depth[cell + side]! + 3, depth[cell + side * width]! + 3, depth[cell + side * (width - 1)]! + 4, depth[cell + side * (width + 1)]! + 4);
  };
  for (const cell of cells) relax(cell, -1);
  for (let i = cells.length - 1; i >= 0; i--) relax(cells[i]!, 1);
  return depth.map((value) => value / 3);
}

const apart = (a: number, b: number, width: number): number => {
  const [dx, dy] = [(a % width) - (b % width), Math.floor(a / width) - Math.floor(b / width)];
  return Math.sqrt(dx * dx + dy * dy);
};

/** Narrowest half width on the straight way between two cells. */
function waist({ depth, width }: Frame, from: number, to: number): number {
  const [x0, y0, x1, y1] = [from % width, Math.floor(from / width), to % width, Math.floor(to / width)];
  const steps = Math.max(Math.abs(x1 - x0), Math.abs(y1 - y0), 1);
  let least = Infinity;
  for (let i = 0; i <= steps; i++) least = Math.min(least, depth[Math.round(y0 + ((y1 - y0) * i) / steps) * width + Math.round(x0 + ((x1 - x0) * i) / steps)]!);
  return least;
}

/** The deepest cells that a waist parts from one another. */
function middlesOf(frame: Frame): number[] {
  const { depth, width } = frame;
  const byDepth = Array.from(frame.cells).sort((a, b) => depth[b]! - depth[a]! || a - b);
  const least = LEAST_MIDDLE * depth[byDepth[0]!]!;
  const middles: number[] = [];
  for (const cell of byDepth) {
    if (depth[cell]! < least) break;
    const sameStone = middles.some((other) => apart(cell, other, width) < depth[other]! || waist(frame, cell, other) > WAIST * Math.min(depth[cell]!, depth[other]!));
    if (!sameStone) middles.push(cell);
  }
  return middles;
}

/** Round places of a region: one, or several where it narrows between its middles. Radius from the area that belongs to each, in cells. */
export function splitTouching(region: Region, gridWidth: number): Disc[] {
  const frame = frameOf(region, gridWidth);
  const { depth, width } = frame;
  const middles = middlesOf(frame);
  const sums = middles.map(() => ({ x: 0, y: 0, cells: 0 }));
  for (const cell of frame.cells) {
    let nearest = 0;
    if (middles.length > 1) {
      const distances = middles.map((middle) => apart(cell, middle, width) - depth[middle]!);
      nearest = distances.indexOf(Math.min(...distances));
    }
    const sum = sums[nearest]!;
    sum.x += cell % width; sum.y += Math.floor(cell / width); sum.cells += 1;
  }
  return sums.filter((sum) => sum.cells > 0).map((sum) => ({ x: frame.left + sum.x / sum.cells, y: frame.top + sum.y / sum.cells, radius: Math.sqrt(sum.cells / Math.PI) }));
}
