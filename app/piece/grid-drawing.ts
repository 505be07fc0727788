import type { Drawing, Primitive } from '../figure/drawing.ts';
import type { MapGround } from './mark.ts';

type Grid = Extract<MapGround, { kind: 'grid' }>;

const LETTERS = 26;
/** A … Z, AA …, as columns of a sheet are named. */
export const columnName = (index: number): string => (index < LETTERS ? '' : columnName(Math.floor(index / LETTERS) - 1)) + String.fromCharCode(65 + (index % LETTERS));

/** Width ÷ height: the fields are squares. */
export const gridAspect = ({ columns, rows }: Grid): number => columns / rows;

/** A plain grid to place stones on where there is no picture of the piece: fields named by letter and number along two edges. */
export function gridDrawing(grid: Grid, width: number): Drawing {
  const { columns, rows } = grid;
  const side = width / columns;
  const height = side * rows;
  const size = Math.min(11, side * 0.3);
  const hair = (x1: number, y1: number, x2: number, y2: number, outer: boolean): Primitive => ({ kind: 'line', x1, y1, x2, y2, ink: outer ? 'ink3' : 'line', width: 1 });
  const primitives: Primitive[] = [];
  for (let c = 0; c <= columns; c += 1) primitives.push(hair(c * side, 0, c * side, height, c === 0 || c === columns));
  for (let r = 0; r <= rows; r += 1) primitives.push(hair(0, r * side, width, r * side, r === 0 || r === rows));
  for (let c = 0; c < columns; c += 1) primitives.push({ kind: 'text', x: (c + 0.5) * side, y: size * 1.2, text: columnName(c), font: 'mono', size, ink: 'ink3', anchor: 'middle' });
  for (let r = 0; r < rows; r += 1) primitives.push({ kind: 'text', x: size * 0.4, y: (r + 0.5) * side + size * 0.35, text: String(r + 1), font: 'mono', size, ink: 'ink3', anchor: 'start' });
  return { width, height, primitives };
}
