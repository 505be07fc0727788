/** Longer texts take the whole width; the longest scroll in their own place. */
const SHORT_CHARACTERS = 110;

/** A named text of a case or an item, as it was written. */
export function Fact({ name, text, mono = false }: { readonly name: string; readonly text: string; readonly mono?: boolean }) {
  const long = text.length > SHORT_CHARACTERS;
  return <div className={long ? 'fact-long' : ''}><dt>{name}</dt><dd className={mono ? 'mono' : ''} tabIndex={long ? 0 : undefined}>{text}</dd></div>;
}
