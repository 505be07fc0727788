import type { ColourClass } from '../../app/domain/colour-class.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { focusSoon } from '../look/focus-soon.ts';
import { COLOUR_OPTIONS } from './colour-options.ts';
import type { IntakeChange, ItemForm } from './intake-state.ts';
import type { FieldSentences } from './intake-to-input.ts';
import './intake.css';

const MANY = 5;

/** The stones of a piece, one line each: where it sits, its shape, its size, its colour class. */
export function StoneRows({ item, parcel, at, wrong, change }: {
  readonly item: ItemForm; readonly parcel: number; readonly at: number; readonly wrong: FieldSentences; readonly change: (change: IntakeChange) => void;
}) {
  const path = `parcels.${parcel}.items.${at}.stones`;
  const many = item.stones.length > 1;
  const add = (more: number) => {
    change({ do: 'add-stones', parcel, item: at, many: more });
    // The head of the rows is their first child.
    focusSoon(`[data-path="parcels.${parcel}.items.${at}"] .stone-row:nth-child(${item.stones.length + 2}) input`);
  };
  return (
    <div className="stone-rows" role="group" aria-label="Stones of the piece">
      <div className="stone-row stone-head label" aria-hidden="true"><span /><span>Where it sits</span><span>Shape and cut</span><span>Measured, mm</span><span>Colour class</span><span /></div>
      {item.stones.map((s, n) => {
        const set = (value: Partial<typeof s>) => { change({ do: 'stone', parcel, item: at, stone: n, value }); };
        return (
          <div key={s.key} className="stone-row">
            <span className="mono quiet">{n + 1}</span>
            <Field label={`Stone ${n + 1}: where it sits`} hideLabel value={s.position} onChange={(position) => { set({ position }); }} error={wrong[`${path}.${n}.position`]} placeholder={n === 0 ? 'centre' : 'left shoulder, first'} />
            <Field label={`Stone ${n + 1}: shape`} hideLabel value={s.shape} onChange={(shape) => { set({ shape }); }} error={wrong[`${path}.${n}.shape`]} placeholder="round" />
            <Field label={`Stone ${n + 1}: measured`} hideLabel mono value={s.measurements} onChange={(measurements) => { set({ measurements }); }} error={wrong[`${path}.${n}.measurements`]} placeholder="about 5.1" />
            <Choice<ColourClass> label={`Stone ${n + 1}: colour class`} hideLabel value={s.colourClass} onChange={(colourClass) => { set({ colourClass }); }} options={COLOUR_OPTIONS} />
            {many ? <Button kind="quiet" aria-label={`Remove stone ${n + 1}`} onPress={() => { change({ do: 'remove-stone', parcel, item: at, stone: n }); }}>✕</Button> : <span />}
          </div>
        );
      })}
      <div className="row gap4">
        <Button kind="quiet" onPress={() => { add(1); }}>Add a stone</Button>
        <Button kind="quiet" onPress={() => { add(MANY); }}>Add {MANY}</Button>
      </div>
    </div>
  );
}
