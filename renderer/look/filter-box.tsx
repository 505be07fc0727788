import { useEffect, useState } from 'react';
import { useKey } from '../keys/keymap.ts';
import './filter-box.css';

const WAIT_MS = 150;

/** A line to narrow a list, reached with "/". Tells its text once the typing pauses. */
export function FilterBox({ label, value, onChange }: { readonly label: string; readonly value: string; readonly onChange: (text: string) => void }) {
  const [text, setText] = useState(value);
  useEffect(() => {
    if (text === value) return undefined;
    const timer = setTimeout(() => { onChange(text); }, WAIT_MS);
    return () => { clearTimeout(timer); };
  }, [text, value, onChange]);
  useKey('/', () => { document.getElementById('filter-box')?.focus(); });
  return (
    <span className="filter-box">
      <input id="filter-box" type="search" aria-label={label} placeholder={label} value={text} maxLength={120} autoComplete="off"
        onChange={(e) => { setText(e.target.value); }} onKeyDown={(e) => { if (e.key === 'Escape') { setText(''); e.currentTarget.blur(); } }} />
      <kbd className="keys" aria-hidden="true">/</kbd>
    </span>
  );
}
