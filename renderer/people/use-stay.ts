import { useEffect } from 'react';
import { door } from '../door.ts';
import { queryClient } from '../queries.ts';

/** How often main is told that somebody works here, at most; and how often the window asks whether it was locked. */
const TELL_EVERY_MS = 20_000;
const LOOK_EVERY_MS = 15_000;
const SIGNS = ['pointerdown', 'keydown', 'wheel'] as const;

/** Tells main of every sign of somebody at work, and asks after a while without one. Main decides; this only asks. */
export function useStay(active: boolean, idleMinutes: number): void {
  useEffect(() => {
    if (!active) return undefined;
    let last = Date.now();
    let told = 0;
    const sign = () => {
      last = Date.now();
      if (last - told < TELL_EVERY_MS) return;
      told = last;
      void door.call('people.stay', {});
    };
    const look = setInterval(() => {
      if (Date.now() - last > idleMinutes * 60_000) void queryClient.invalidateQueries({ queryKey: ['casebook.status'] });
    }, LOOK_EVERY_MS);
    for (const name of SIGNS) window.addEventListener(name, sign, { capture: true, passive: true });
    return () => {
      clearInterval(look);
      for (const name of SIGNS) window.removeEventListener(name, sign, { capture: true });
    };
  }, [active, idleMinutes]);
}
