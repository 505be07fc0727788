import { useEffect, useRef } from 'react';

/** "N", "Mod+K", "Mod+Enter", "Escape". Mod is ⌘ on a Mac, Ctrl elsewhere. */
export type Chord = string;

const stack: { chord: Chord; run: () => void }[] = [];

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
  return element !== null && (element.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(element.tagName));
}

window.addEventListener('keydown', (event) => {
  if (event.defaultPrevented || event.isComposing) return;
  const chord = chordOf(event);
  // Bare letters belong to whoever types; a sheet that is open keeps keys from the view beneath.
  if (!/^(Mod|Alt)\+/.test(chord) && isTyping(event.target)) return;
  const entry = [...stack].reverse().find((e) => e.chord === chord);
  if (!entry) return;
  const inDialog = document.querySelector('.dialog');
  if (inDialog && !inDialog.contains(event.target as Node | null) && !chord.includes('Mod+')) return;
  event.preventDefault();
  entry.run();
});

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
