import { useMemo, useState } from 'react';
import { Field } from '../look/field.tsx';
import { Check } from '../look/choice.tsx';
import { filterReferences, type ReferenceChoice as Choice } from './reference-choices.ts';

/** Positions of the reference tables, to be laid over the spectrum as dashed lines. */
export function ReferenceChoice({ choices, chosen, onChosen, hasLaser }: {
  readonly choices: readonly Choice[]; readonly chosen: ReadonlySet<string>; readonly onChosen: (chosen: ReadonlySet<string>) => void; readonly hasLaser: boolean;
}) {
  const [text, setText] = useState('');
  const found = useMemo(() => filterReferences(choices, text), [choices, text]);
  const toggle = (id: string, on: boolean) => {
    const next = new Set(chosen);
    if (on) next.add(id);
    else next.delete(id);
    onChosen(next);
  };
  return (
    <div className="panel-body">
      <div className="panel-row">
        <Field label="Narrow the list" hideLabel placeholder="name, defect or position: nickel, 737, moissanite" value={text} onChange={setText} className="panel-filter" />
        <span className="quiet">{chosen.size} laid over</span>
        <span className="grow" />
        <button type="button" className="word-button" onClick={() => { onChosen(new Set([...chosen, ...found.filter((c) => hasLaser || c.unit !== 'raman-shift').map((c) => c.id)])); }}>All listed</button>
        <button type="button" className="word-button" onClick={() => { onChosen(new Set()); }}>None</button>
      </div>
      {found.length === 0 ? <p className="quiet">No reference position has these words.</p> : null}
      <ul className="panel-columns panel-columns-wide">
        {found.map((c) => (
          <li key={c.id} className="reference">
            <Check label={c.name} checked={chosen.has(c.id)} disabled={!hasLaser && c.unit === 'raman-shift'} onChange={(on) => { toggle(c.id, on); }} />
            <span className="mono quiet">{c.at.map((at) => (c.unit === 'nm' ? at.toFixed(1) : at)).join(' ')}{c.unit === 'nm' ? ' nm' : c.unit === 'raman-shift' ? ' cm⁻¹ shift' : ' cm⁻¹'}</span>
            <span className="quiet one-line" title={c.what}>{c.what}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}
