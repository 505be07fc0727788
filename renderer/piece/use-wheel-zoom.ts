import { useEffect, useRef, type RefObject } from 'react';
import type { Point } from '../../app/piece/picture-view.ts';

/** Zoom of one px of the wheel. */
const WHEEL_STEP = 1.0015;

/** The wheel over an element zooms around the pointer; the page does not scroll. React would listen passively and could not keep it from scrolling. */
export function useWheelZoom(of: RefObject<HTMLElement | null>, zoomBy: (factor: number, around: Point) => void): void {
  const latest = useRef(zoomBy);
  useEffect(() => { latest.current = zoomBy; });
  useEffect(() => {
    const frame = of.current;
    if (!frame) return undefined;
    const onWheel = (event: WheelEvent): void => {
      event.preventDefault();
      const box = frame.getBoundingClientRect();
      latest.current(WHEEL_STEP ** -event.deltaY, { x: event.clientX - box.left, y: event.clientY - box.top });
    };
    frame.addEventListener('wheel', onWheel, { passive: false });
    return () => { frame.removeEventListener('wheel', onWheel); };
  }, [of]);
}
