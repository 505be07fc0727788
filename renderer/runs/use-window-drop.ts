import { useEffect, useRef, useState } from 'react';

/** How many places take whatever is dropped on the window at the moment. */
let takers = 0;
export const dropIsTaken = (): boolean => takers > 0;

export const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** Takes what is dropped anywhere on the window while `active`; `onDropped` must look at it at once. Gives whether files are held over the window. */
export function useWindowDrop(onDropped: (transfer: DataTransfer) => void, active = true): boolean {
  const [over, setOver] = useState(false);
  const latest = useRef(onDropped);
  useEffect(() => { latest.current = onDropped; });
  useEffect(() => {
    if (!active) return undefined;
    let depth = 0;
    takers += 1;
    const onEnter = (event: DragEvent) => { if (hasFiles(event)) { depth += 1; setOver(true); } };
    const onLeave = (event: DragEvent) => { if (hasFiles(event)) { depth -= 1; if (depth <= 0) setOver(false); } };
    const onOver = (event: DragEvent) => { if (hasFiles(event)) event.preventDefault(); };
    const onDrop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      depth = 0;
      setOver(false);
      if (event.dataTransfer) latest.current(event.dataTransfer);
    };
    window.addEventListener('dragenter', onEnter);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('dragover', onOver);
    window.addEventListener('drop', onDrop);
    return () => {
      takers -= 1;
      window.removeEventListener('dragenter', onEnter);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('drop', onDrop);
      setOver(false);
    };
  }, [active]);
  return over;
}
