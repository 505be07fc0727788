import { useRef, type KeyboardEvent } from 'react';

type Option = { readonly value: string; readonly label: string };
type Props = {
  readonly label: string; readonly options: readonly Option[]; readonly error?: string | undefined; readonly autoFocus?: boolean;
  readonly chosen: readonly string[]; readonly many?: boolean; readonly onChoose: (value: string) => void;
};

/** The key that chooses the n-th of a group: digits first, letters beyond nine. */
export const choiceKey = (index: number): string => (index < 9 ? String(index + 1) : String.fromCharCode(65 + index - 9));

/** Where the hands go after a choice: the next group of the same form. */
function focusNextGroup(here: HTMLElement | null): void {
  const groups = [...document.querySelectorAll<HTMLElement>('[data-big-choice]')];
  const next = here ? groups[groups.indexOf(here) + 1] : undefined;
  next?.querySelector<HTMLElement>('button[tabindex="0"]')?.focus();
}

/** Large choices for a dark room: one press of a digit or letter, or a finger. Arrows move between them. */
export function BigChoice({ label, options, error, autoFocus, chosen, many = false, onChoose }: Props) {
  const group = useRef<HTMLDivElement>(null);
  const choose = (value: string, goOn: boolean) => {
    onChoose(value);
    if (goOn && !many) focusNextGroup(group.current);
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const index = options.findIndex((_, i) => choiceKey(i) === event.key.toUpperCase());
    const option = options[index];
    if (option) {
      event.preventDefault();
      choose(option.value, true);
      return;
    }
    const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    const buttons = [...group.current?.querySelectorAll<HTMLElement>('button') ?? []];
    const at = buttons.indexOf(document.activeElement as HTMLElement);
    buttons[(at + by + buttons.length) % buttons.length]?.focus();
  };
  const firstChosen = Math.max(0, options.findIndex((o) => chosen.includes(o.value)));
  return (
    <div className="big-choice" data-big-choice ref={group}>
      <span className="label" id={`big-${label}`}>{label}</span>
      <div role={many ? 'group' : 'radiogroup'} aria-labelledby={`big-${label}`} aria-invalid={error !== undefined} className="big-choices" onKeyDown={onKey}>
        {options.map((o, i) => (
          <button key={o.value} type="button" role={many ? 'checkbox' : 'radio'} aria-checked={chosen.includes(o.value)} tabIndex={many || i === firstChosen ? 0 : -1}
            autoFocus={autoFocus === true && i === firstChosen} onClick={() => { choose(o.value, false); }}>
            <kbd className="keys" aria-hidden="true">{choiceKey(i)}</kbd>{o.label}
          </button>
        ))}
      </div>
      {error ? <span className="field-error">{error}</span> : null}
    </div>
  );
}
