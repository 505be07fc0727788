import { z } from 'zod';
import type { Background } from './background.ts';
import { lightColour, lightColourOf } from './light-colour.ts';
import type { DiscLight } from './measure-disc.ts';

/** Part of an outline that is measured, in its radius: the rim belongs to the setting (judgement). */
export const MARK_INNER = 0.85;
/** A brightness below this many standard errors is dark (judgement). */
export const DARK_BELOW = 3;
/** More clipped points than this share make a stone's brightness a lower bound (judgement). */
const MOST_CLIPPED = 0.01;
/** Stray light where no ring about a stone can be seen: none, but for this linear light. */
export const UNKNOWN_BACKGROUND: Background = { rgb: [0, 0, 0], error: 0.003 };

/** A stone on one photograph. Brightness is the mean of R, G and B in linear light, background taken off, 1 = full scale. */
export const markLight = z.object({
  brightness: z.number(),
  /** One standard error: how uneven the background is. */
  error: z.number(),
  /** Share of points at the end of the scale. */
  clipped: z.number(),
  state: z.enum(['measured', 'dark', 'clipped']),
  /** Null where it is too dark for a colour. */
  colour: lightColour.nullable(),
});
export type MarkLight = z.infer<typeof markLight>;

/** A stone with what lies about it. */
export type SeenDisc = { readonly light: DiscLight; readonly background: Background };

export const meanOf = (rgb: readonly [number, number, number]): number => (rgb[0] + rgb[1] + rgb[2]) / 3;

export function measureMark({ light, background }: SeenDisc): MarkLight {
  const net = [light.rgb[0] - background.rgb[0], light.rgb[1] - background.rgb[1], light.rgb[2] - background.rgb[2]] as const;
  const brightness = meanOf(net);
  const { error } = background;
  const state = light.clipped > MOST_CLIPPED ? 'clipped' : brightness < DARK_BELOW * error ? 'dark' : 'measured';
  return { brightness, error, clipped: light.clipped, state, colour: state === 'dark' ? null : lightColourOf(net) };
}
