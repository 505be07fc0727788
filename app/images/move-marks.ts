import { ok, type Result } from '../result.ts';
import { alignPair, ALIGN_DEFAULTS, type AlignRefusal } from './align-pair.ts';
import { brightnessGrid } from './brightness-grid.ts';
import type { Outline, Photograph } from './photograph.ts';
import { placer } from './placement.ts';

/** Marks placed on one photograph of a piece, carried over to another one of the same size. */
export function moveMarks<M extends Outline>(marks: readonly M[], ground: Photograph, onto: Photograph): Result<M[], AlignRefusal> {
  const { width, height } = ground;
  const cell = Math.max(1, Math.ceil(Math.max(width, height) / ALIGN_DEFAULTS.longSide));
  const laid = alignPair(brightnessGrid(ground, ALIGN_DEFAULTS.longSide), brightnessGrid(onto, ALIGN_DEFAULTS.longSide), cell);
  if (!laid.ok) return laid;
  const place = placer(laid.value.placement, width, height);
  return ok(marks.map((mark) => {
    const [x, y] = place(mark.x * width - 0.5, mark.y * height - 0.5);
    return { ...mark, x: (x + 0.5) / width, y: (y + 0.5) / height };
  }));
}
