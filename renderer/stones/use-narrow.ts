import { useSyncExternalStore } from 'react';

/** Below this width of the window the case tree folds, px. */
const FOLDS_BELOW = 1400;
const query = window.matchMedia(`(max-width: ${FOLDS_BELOW - 1}px)`);

/** True where the window is too narrow for the tree beside spectrum and margin. */
export const useNarrow = (): boolean => useSyncExternalStore((tell) => { query.addEventListener('change', tell); return () => { query.removeEventListener('change', tell); }; }, () => query.matches);
