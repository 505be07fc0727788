import { useState, type ReactNode } from 'react';

export type Panel = { readonly key: string; readonly name: string; readonly count?: number; readonly body: ReactNode };

/** What belongs to the figure and is looked at now and then: one at a time, below it. */
export function SpectrumPanels({ panels, first }: { readonly panels: readonly Panel[]; readonly first: string | null }) {
  const [open, setOpen] = useState<string | null>(first);
  const shown = panels.find((panel) => panel.key === open);
  return (
    <div className="panels">
      <div className="panels-words">
        {panels.map((panel) => (
          <button key={panel.key} type="button" className="word-button" aria-expanded={panel.key === open} onClick={() => { setOpen(panel.key === open ? null : panel.key); }}>
            {panel.name}{panel.count === undefined ? null : <span className="mono"> {panel.count}</span>}
          </button>
        ))}
      </div>
      {shown ? <div className="panel" role="region" aria-label={shown.name}>{shown.body}</div> : null}
    </div>
  );
}
