import { useEffect, useRef, type RefObject } from 'react';

/** How long the sheet may still be growing after files came: what they tell chooses the method, and with it fields and cautions above them. Milliseconds. */
const SETTLING_MS = 1500;
const HANDS = ['wheel', 'pointerdown', 'keydown'] as const;

/**
 * Brings the top of `place` into sight whenever `count` grows and `ready` holds, and keeps it there
 * while its parent still changes height, until a hand moves the sheet.
 */
export function useShownOnArrival(place: RefObject<HTMLElement | null>, count: number, ready: boolean): void {
  const came = useRef(0);
  useEffect(() => {
    if (!ready) return;
    const grew = count > came.current;
    came.current = count;
    const shown = place.current;
    if (!grew || !shown?.parentElement) return;
    const watch = new ResizeObserver(() => { shown.scrollIntoView({ block: 'start' }); });
    const stop = () => {
      watch.disconnect();
      clearTimeout(end);
      for (const hand of HANDS) window.removeEventListener(hand, stop, true);
    };
    const end = setTimeout(stop, SETTLING_MS);
    for (const hand of HANDS) window.addEventListener(hand, stop, true);
    watch.observe(shown.parentElement);
    for (const child of shown.parentElement.children) watch.observe(child);
    // Not stopped by the next render: the sheet is still settling then.
  }, [place, count, ready]);
}
