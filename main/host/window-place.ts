import { z } from 'zod';

/** Pixels independent of the screen's density. */
export const WINDOW_DEFAULTS = { width: 1440, height: 900, minWidth: 1280, minHeight: 720 } as const;

/** So much of the window must lie on a screen, or the person could not reach it. */
const REACHABLE = { width: 200, height: 80 } as const;

export const windowPlace = z.object({
  x: z.number().int(), y: z.number().int(),
  width: z.number().int().positive(), height: z.number().int().positive(),
  maximised: z.boolean(),
});
export type WindowPlace = z.infer<typeof windowPlace>;

export type Area = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
export type Placing = { width: number; height: number; x?: number; y?: number };

/** Where the window opens: where it was, unless that is off every screen by now. Never smaller than the least size. */
export function placeWindow(saved: WindowPlace | null, screens: readonly Area[]): Placing {
  if (saved === null) return { width: WINDOW_DEFAULTS.width, height: WINDOW_DEFAULTS.height };
  const width = Math.max(saved.width, WINDOW_DEFAULTS.minWidth);
  const height = Math.max(saved.height, WINDOW_DEFAULTS.minHeight);
  const reachable = screens.some((screen) => isReachable({ x: saved.x, y: saved.y, width, height }, screen));
  return reachable ? { width, height, x: saved.x, y: saved.y } : { width, height };
}

/** The title bar is at the top: its upper edge must be on the screen, not only some lower part of the window. */
function isReachable(window: Area, screen: Area): boolean {
  const across = Math.min(window.x + window.width, screen.x + screen.width) - Math.max(window.x, screen.x);
  const below = screen.y + screen.height - window.y;
  return across >= REACHABLE.width && window.y >= screen.y && below >= REACHABLE.height;
}

/** What was remembered, or null where the text is not what this program writes. */
export function parseWindowPlace(text: string): WindowPlace | null {
  try {
    const parsed = windowPlace.safeParse(JSON.parse(text));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
