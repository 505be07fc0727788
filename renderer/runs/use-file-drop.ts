import { useEffect, useRef, useState } from 'react';

const hasFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') ?? false;

/** Takes files that are dropped anywhere on the window while `active`. Gives whether some are held over it. */
export function useFileDrop(onFiles: (files: readonly File[]) => void, active = true): boolean {
  const [over, setOver] = useState(false);
  const latest = useRef(onFiles);
  useEffect(() => { latest.current = onFiles; });
  useEffect(() => {
    if (!active) return undefined;
    let depth = 0;
    const onEnter = (event: DragEvent) => { if (hasFiles(event)) { depth += 1; setOver(true); } };
    const onLeave = (event: DragEvent) => { if (hasFiles(event)) { depth -= 1; if (depth <= 0) setOver(false); } };
    const onOver = (event: DragEvent) => { if (hasFiles(event)) event.preventDefault(); };
    const onDrop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      depth = 0;
      setOver(false);
      const files = [...event.dataTransfer?.files ?? []];
      if (files.length > 0) latest.current(files);
    };
    window.addEventListener('dragenter', onEnter);
    window.addEventListener('dragleave', onLeave);
    window.addEventListener('dragover', onOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragenter', onEnter);
      window.removeEventListener('dragleave', onLeave);
      window.removeEventListener('dragover', onOver);
      window.removeEventListener('drop', onDrop);
      setOver(false);
    };
  }, [active]);
  return over;
}
