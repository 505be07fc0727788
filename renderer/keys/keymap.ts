import { useEffect, useRef } from 'react';

/** "N", "Mod+K", "Mod+Enter", "Escape". Mod is ⌘ on a Mac, Ctrl elsewhere. */
export type Chord = string;

const stack: { chord: Chord; run: () => void }[] = [];

/** A sheet over the work answers to its main action alone; all other keys belong to the view beneath, and wait. */
const SHEET_CHORD: Chord = 'Mod+Enter';
/** Locks the window, whatever lies over it: nobody closes a half-filled sheet before leaving the desk. Given to nothing else. */
export const LOCK_CHORD: Chord = 'Alt+L';
const SHEET = '.dialog, .palette-dialog';

function chordOf(event: KeyboardEvent): Chord {
  const parts: string[] = [];
  if (event.metaKey || event.ctrlKey) parts.push('Mod');
  if (event.altKey) parts.push('Alt');
  // With Alt some layouts type another letter; the key's own place on the board is meant.
  const letter = event.altKey ? /^Key([A-Z])$/.exec(event.code)?.[1] : undefined;
  const key = letter ?? (event.key.length === 1 ? event.key.toUpperCase() : event.key);
  if (event.shiftKey && event.key.length > 1) parts.push('Shift');
  parts.push(key);
  return parts.join('+');
}

function isTyping(target: EventTarget | null): boolean {
  const element = target as HTMLElement | null;
  // Nobody types into a box to tick: what was ticked is often acted upon by a key at once.
  if (element instanceof HTMLInputElement && element.type === 'checkbox') return false;
  return element !== null && (element.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(element.tagName));
}

function onKey(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing) return;
  const chord = chordOf(event);
  // Bare letters belong to whoever types.
  if (!/^(Mod|Alt)\+/.test(chord) && isTyping(event.target)) return;
  if (chord !== SHEET_CHORD && chord !== LOCK_CHORD && document.querySelector(SHEET) !== null) return;
  const entry = [...stack].reverse().find((e) => e.chord === chord);
  if (!entry) return;
  event.preventDefault();
  event.stopPropagation();
  // A key that is held down a little too long must not hand in twice.
  if (event.repeat && chord === SHEET_CHORD) return;
  entry.run();
}

// On the way down: a chord with Enter would otherwise press the button that has the focus as well.
window.addEventListener('keydown', (event) => { if (event.metaKey || event.ctrlKey) onKey(event); }, true);
window.addEventListener('keydown', (event) => { if (!event.metaKey && !event.ctrlKey) onKey(event); });

/** Gives an action its key while the caller is shown; the latest shown wins. */
export function useKey(chord: Chord, run: () => void, active = true): void {
  const latest = useRef(run);
  useEffect(() => { latest.current = run; });
  useEffect(() => {
    if (!active) return undefined;
    const entry = { chord, run: () => { latest.current(); } };
    stack.push(entry);
    return () => { stack.splice(stack.indexOf(entry), 1); };
  }, [chord, active]);
}

/** Given by every sheet: without a main action of its own, Mod+Enter does nothing there, and never the view's beneath. */
export function useSheetKeys(): void {
  useKey(SHEET_CHORD, () => undefined);
}
