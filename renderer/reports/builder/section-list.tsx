import { useState, type KeyboardEvent } from 'react';
import { Button as AriaButton, GridList, GridListItem, useDragAndDrop } from 'react-aria-components';
import type { SectionChoice } from '../../../app/report/templates/template.ts';
import { Button } from '../../look/button.tsx';
import { focusSoon } from '../../look/focus-soon.ts';
import { movedBeside, movedBy } from './moved.ts';
import './builder.css';

export type SectionTitle = { readonly id: string; readonly title: string; readonly tells: string };

/**
 * Sections in their order, ticked by boxes and not by selecting, because what is selected is dragged together. Ticked ones are printed. Arrow keys go through them, Space ticks, Alt with an arrow key or the buttons move by one place;
 * dragged by the handle, or by Enter on the handle, one goes to any place. What a move did is said to a reader.
 */
export function SectionList({ sections, titles, onChange }: { readonly sections: SectionChoice; readonly titles: readonly SectionTitle[]; readonly onChange: (sections: SectionChoice) => void }) {
  const [said, setSaid] = useState('');
  const titleOf = (id: string): string => titles.find((one) => one.id === id)?.title ?? id;
  const place = (next: SectionChoice, id: string) => {
    onChange(next);
    setSaid(`${titleOf(id)} is number ${next.findIndex((entry) => entry.id === id) + 1} of ${next.length}.`);
    focusSoon(`.section-list [data-key="${id}"]`);
  };
  const move = (id: string, by: 1 | -1) => {
    const index = sections.findIndex((entry) => entry.id === id);
    if (index < 0 || index + by < 0 || index + by >= sections.length) return;
    place(movedBy(sections, index, by), id);
  };
  const tick = (id: string, on: boolean) => {
    onChange(sections.map((entry) => (entry.id === id ? { ...entry, on } : entry)));
    setSaid(`${titleOf(id)} is ${on ? 'printed' : 'left out'}.`);
  };
  const onKey = (event: KeyboardEvent) => {
    const target = event.target as HTMLElement;
    const id = target.closest('[data-key]')?.getAttribute('data-key');
    const entry = sections.find((one) => one.id === id);
    if (!id || !entry) return;
    if (event.key === ' ' && target.matches('[role=row]')) {
      event.preventDefault();
      event.stopPropagation();
      tick(id, !entry.on);
    }
    if (!event.altKey || (event.key !== 'ArrowUp' && event.key !== 'ArrowDown')) return;
    event.preventDefault();
    event.stopPropagation();
    move(id, event.key === 'ArrowUp' ? -1 : 1);
  };
  const { dragAndDropHooks } = useDragAndDrop({
    getItems: (keys) => [...keys].map((key) => ({ 'text/plain': titleOf(String(key)) })),
    onReorder: ({ keys, target }) => {
      const moved = new Set([...keys].map(String));
      const [first] = moved;
      if (first === undefined || target.dropPosition === 'on') return;
      place(movedBeside(sections, moved, String(target.key), target.dropPosition), first);
    },
  });
  return (
    <div onKeyDownCapture={onKey}>
      <GridList className="section-list" aria-label="Sections, in the order they are printed" items={sections} dragAndDropHooks={dragAndDropHooks} dependencies={[sections, titles]}>
        {(entry) => {
          const title = titleOf(entry.id);
          const index = sections.findIndex((one) => one.id === entry.id);
          return (
            <GridListItem id={entry.id} textValue={title} aria-label={entry.on ? title : `${title}, left out`} className={entry.on ? 'section-row' : 'section-row section-off'}>
              <AriaButton slot="drag" className="section-handle"><span aria-hidden="true">⠿</span></AriaButton>
              <label className="check grow" title={titles.find((one) => one.id === entry.id)?.tells}>
                <input type="checkbox" checked={entry.on} onChange={(event) => { tick(entry.id, event.target.checked); }} />
                <span>{title}</span>
              </label>
              <span className="section-moves">
                <Button kind="quiet" aria-label={`${title} up`} isDisabled={index === 0} onPress={() => { move(entry.id, -1); }}>↑</Button>
                <Button kind="quiet" aria-label={`${title} down`} isDisabled={index === sections.length - 1} onPress={() => { move(entry.id, 1); }}>↓</Button>
              </span>
            </GridListItem>
          );
        }}
      </GridList>
      <p className="hide" role="status">{said}</p>
    </div>
  );
}
