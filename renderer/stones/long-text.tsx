import { useState } from 'react';

/** Longer texts are shown in part until they are asked for. */
const SHOWN_CHARACTERS = 320;

/** A text of several sentences that may be long: its beginning, and the whole on demand. */
export function LongText({ text, className }: { readonly text: string; readonly className: string }) {
  const [whole, setWhole] = useState(false);
  if (text.length <= SHOWN_CHARACTERS) return <p className={className}>{text}</p>;
  return (
    <div>
      <p className={`${className} ${whole ? '' : 'long-text'}`}>{text}</p>
      <button type="button" className="word-button long-text-more" aria-expanded={whole} onClick={() => { setWhole(!whole); }}>{whole ? 'Less' : 'The whole text'}</button>
    </div>
  );
}
