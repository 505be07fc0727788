import { useEffect } from 'react';
import { useNotes } from '../look/notes.tsx';
import { dropIsTaken, hasFiles } from './use-window-drop.ts';

/** Answers files that are dropped where nothing takes any: without an answer a person believes them kept. */
export function useStrayDrop(): void {
  const notes = useNotes();
  useEffect(() => {
    const onOver = (event: DragEvent) => { if (hasFiles(event)) event.preventDefault(); };
    const onDrop = (event: DragEvent) => {
      // A place of its own, such as a photograph's, has taken it before the window hears of it.
      if (!hasFiles(event) || event.defaultPrevented || dropIsTaken()) return;
      event.preventDefault();
      const many = (event.dataTransfer?.files.length ?? 0) > 1;
      notes.complain({ message: `Nothing here takes files: ${many ? 'they were' : 'it was'} not kept.`, next: `Open a stone first, then drop the ${many ? 'files' : 'file'} there, with no sheet open over it.` });
    };
    window.addEventListener('dragover', onOver);
    window.addEventListener('drop', onDrop);
    return () => { window.removeEventListener('dragover', onOver); window.removeEventListener('drop', onDrop); };
  }, [notes]);
}
