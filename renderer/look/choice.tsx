import { useId, type KeyboardEvent } from 'react';
import './field.css';

type Option<T extends string> = { readonly value: T; readonly label: string; readonly disabled?: boolean };

/** One of a list. The platform's own list box: it works with every keyboard and reader. */
export function Choice<T extends string>(p: {
  readonly label: string; readonly value: T | ''; readonly options: readonly Option<T>[]; readonly onChange: (value: T) => void;
  readonly placeholder?: string; readonly error?: string | undefined; readonly hint?: string; readonly disabled?: boolean; readonly hideLabel?: boolean; readonly className?: string;
}) {
  const id = useId();
  return (
    <div className={`choice ${p.className ?? ''}`}>
      <label htmlFor={id} className={p.hideLabel ? 'hide' : 'label'}>{p.label}</label>
      <select id={id} value={p.value} disabled={p.disabled} aria-invalid={p.error !== undefined} aria-describedby={p.error ? `${id}-e` : undefined}
        onChange={(e) => { p.onChange(e.target.value as T); }}>
        {p.placeholder !== undefined ? <option value="" disabled={p.value !== ''}>{p.placeholder}</option> : null}
        {p.options.map((o) => <option key={o.value} value={o.value} disabled={o.disabled}>{o.label}</option>)}
      </select>
      {p.hint && !p.error ? <span className="field-hint">{p.hint}</span> : null}
      {p.error ? <span className="field-error" id={`${id}-e`}>{p.error}</span> : null}
    </div>
  );
}

/** Few exclusive choices, all visible; arrow keys move. */
export function Segmented<T extends string>(p: { readonly label: string; readonly value: T; readonly options: readonly Option<T>[]; readonly onChange: (value: T) => void }) {
  const move = (event: KeyboardEvent<HTMLElement>, by: number) => {
    event.preventDefault();
    const usable = p.options.filter((o) => !o.disabled);
    const at = usable.findIndex((o) => o.value === p.value);
    const next = usable[(at + by + usable.length) % usable.length];
    if (!next) return;
    p.onChange(next.value);
    event.currentTarget.querySelectorAll<HTMLElement>('[role="radio"]')[p.options.indexOf(next)]?.focus();
  };
  return (
    <div role="radiogroup" aria-label={p.label} className="segmented" onKeyDown={(e) => {
      if (e.key === 'ArrowRight' || e.key === 'ArrowDown') move(e, 1);
      if (e.key === 'ArrowLeft' || e.key === 'ArrowUp') move(e, -1);
    }}>
      {p.options.map((o) => (
        <button key={o.value} type="button" role="radio" aria-checked={o.value === p.value} tabIndex={o.value === p.value ? 0 : -1} disabled={o.disabled}
          onClick={() => { p.onChange(o.value); }}>{o.label}</button>
      ))}
    </div>
  );
}

export function Check(p: { readonly label: string; readonly checked: boolean; readonly onChange: (checked: boolean) => void; readonly disabled?: boolean }) {
  return (
    <label className="check">
      <input type="checkbox" checked={p.checked} disabled={p.disabled} onChange={(e) => { p.onChange(e.target.checked); }} />
      <span>{p.label}</span>
    </label>
  );
}
