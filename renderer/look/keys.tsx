const MAC = typeof navigator !== 'undefined' && /Mac/.test(navigator.platform);
const WORDS: Readonly<Record<string, string>> = MAC
  ? { Mod: '⌘', Enter: '↵', Shift: '⇧', Alt: '⌥', Escape: 'esc' }
  : { Mod: 'Ctrl', Enter: '↵', Shift: 'Shift', Alt: 'Alt', Escape: 'Esc' };

/** A key or chord as a person reads it: "Mod+Enter" → "Ctrl ↵". */
export function Keys({ of }: { readonly of: string }) {
  return <kbd className="keys" aria-hidden="true">{of.split('+').map((k) => WORDS[k] ?? k).join(' ')}</kbd>;
}
