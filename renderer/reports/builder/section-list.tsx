import type { KeyboardEvent } from 'react';
import type { SectionChoice } from '../../../app/report/templates/template.ts';
import { Button } from '../../look/button.tsx';
import { focusSoon } from '../../look/focus-soon.ts';
import './builder.css';

export type SectionTitle = { readonly id: string; readonly title: string; readonly tells: string };

/** The list with one entry moved by `by` places; the same list where it can't go further. */
export function movedBy<Entry>(list: readonly Entry[], index: number, by: 1 | -1): Entry[] {
  const next = [...list];
  const [entry] = next.splice(index, 1);
  const to = index + by;
  if (entry === undefined || to < 0 || to > next.length) return [...list];
  next.splice(to, 0, entry);
  return next;
}

/** Sections in their order: ticked ones are printed; Alt with an arrow key, or the buttons, move them. */
export function SectionList({ sections, titles, onChange }: { readonly sections: SectionChoice; readonly titles: readonly SectionTitle[]; readonly onChange: (sections: SectionChoice) => void }) {
  const move = (index: number, by: 1 | -1) => {
    const entry = sections[index];
    if (!entry || index + by < 0 || index + by >= sections.length) return;
    onChange(movedBy(sections, index, by));
    focusSoon(`#section-${entry.id}`);
  };
  const onKey = (event: KeyboardEvent, index: number) => {
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    move(index, event.key === 'ArrowUp' ? -1 : 1);
  };
  return (
    <ol className="section-list" aria-label="Sections, in the order they are printed">
      {sections.map((entry, index) => {
        const section = titles.find((one) => one.id === entry.id);
        const title = section?.title ?? entry.id;
        return (
          <li key={entry.id} className={entry.on ? '' : 'section-off'} onKeyDown={(event) => { onKey(event, index); }}>
            <label className="check" title={section?.tells}>
              <input id={`section-${entry.id}`} type="checkbox" checked={entry.on} aria-keyshortcuts="Alt+ArrowUp Alt+ArrowDown"
                onChange={(event) => { onChange(sections.map((one) => (one.id === entry.id ? { ...one, on: event.target.checked } : one))); }} />
              <span>{title}</span>
            </label>
            <span className="section-moves">
              <Button kind="quiet" aria-label={`${title} up`} excludeFromTabOrder isDisabled={index === 0} onPress={() => { move(index, -1); }}>↑</Button>
              <Button kind="quiet" aria-label={`${title} down`} excludeFromTabOrder isDisabled={index === sections.length - 1} onPress={() => { move(index, 1); }}>↓</Button>
            </span>
          </li>
        );
      })}
    </ol>
  );
}
