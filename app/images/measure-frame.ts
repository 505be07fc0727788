import { backgroundAbout } from './background.ts';
import type { PairMark } from './compare-pair.ts';
import { MARK_INNER, measureMark, UNKNOWN_BACKGROUND, type MarkLight } from './mark-light.ts';
import { measureDisc } from './measure-disc.ts';
import type { Photograph } from './photograph.ts';

/** Light of every mark on one frame, in the order of the marks; null where a mark lies at the edge. */
export function measureFrame(photograph: Photograph, marks: readonly PairMark[]): (MarkLight | null)[] {
  const { width, height } = photograph;
  const discs = marks.map(({ x, y, radius }) => ({ x: x * width - 0.5, y: y * height - 0.5, radius: radius * width }));
  return discs.map((disc, i) => {
    const light = measureDisc(photograph, { ...disc, radius: MARK_INNER * disc.radius });
    if (light === null) return null;
    return measureMark({ light, background: backgroundAbout(photograph, disc, discs.filter((_, k) => k !== i)) ?? UNKNOWN_BACKGROUND });
  });
}
