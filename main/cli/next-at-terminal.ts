/** What to do next, as somebody at a terminal can do it: the judges' own sentence speaks of the window. */
export const nextAtTerminal = ({ verdict, next }: { readonly verdict: string; readonly next: string }): string =>
  (verdict === 'unknown-key' ? `${next} Here the file of the key is named with --key.` : next);
