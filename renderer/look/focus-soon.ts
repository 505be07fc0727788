/** Puts the cursor into what `selector` finds once the window has drawn it. */
export function focusSoon(selector: string): void {
  requestAnimationFrame(() => { document.querySelector<HTMLElement>(selector)?.focus(); });
}
