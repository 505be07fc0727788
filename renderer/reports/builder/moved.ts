/** The list with one entry moved by `by` places; the same list where it can't go further. */
export function movedBy<Entry>(list: readonly Entry[], index: number, by: 1 | -1): Entry[] {
  const next = [...list];
  const [entry] = next.splice(index, 1);
  const to = index + by;
  if (entry === undefined || to < 0 || to > next.length) return [...list];
  next.splice(to, 0, entry);
  return next;
}

/** The list with the entries named put before or after `target`, in the order they had. The same list where the target is one of them, or is not there. */
export function movedBeside<Entry extends { readonly id: string }>(list: readonly Entry[], moved: ReadonlySet<string>, target: string, side: 'before' | 'after'): Entry[] {
  const rest = list.filter((entry) => !moved.has(entry.id));
  const at = rest.findIndex((entry) => entry.id === target);
  if (at < 0) return [...list];
  rest.splice(side === 'before' ? at : at + 1, 0, ...list.filter((entry) => moved.has(entry.id)));
  return rest;
}
