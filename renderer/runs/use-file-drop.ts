import { useWindowDrop } from './use-window-drop.ts';

/** Takes files that are dropped anywhere on the window while `active`. Gives whether some are held over it. */
export function useFileDrop(onFiles: (files: readonly File[]) => void, active = true): boolean {
  return useWindowDrop((transfer) => {
    const files = [...transfer.files];
    if (files.length > 0) onFiles(files);
  }, active);
}
