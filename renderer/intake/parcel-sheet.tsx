import { itemLabel } from '../../app/custody/item-label.ts';
import { Button } from '../look/button.tsx';
import { Field } from '../look/field.tsx';
import type { IntakeChange, ParcelForm } from './intake-state.ts';
import type { FieldSentences } from './intake-to-input.ts';
import { ItemSheet } from './item-sheet.tsx';
import './intake.css';

/** One sealed packet with what is in it. */
export function ParcelSheet({ parcel, at, firstItem, only, wrong, change }: {
  readonly parcel: ParcelForm; readonly at: number; readonly firstItem: number; readonly only: boolean; readonly wrong: FieldSentences; readonly change: (change: IntakeChange) => void;
}) {
  const path = `parcels.${at}`;
  return (
    <section className="parcel-sheet" aria-label={`Parcel ${at + 1}`}>
      <header className="parcel-head">
        <h2>Parcel {at + 1}</h2>
        <Field label="Seal number" mono value={parcel.sealNumber} onChange={(sealNumber) => { change({ do: 'parcel', parcel: at, value: { sealNumber } }); }} error={wrong[`${path}.sealNumber`]} placeholder="none: not sealed" className="parcel-seal" />
        <Field label="Parcel remarks" value={parcel.remarks} onChange={(remarks) => { change({ do: 'parcel', parcel: at, value: { remarks } }); }} error={wrong[`${path}.remarks`]} className="grow" />
        {only ? null : <Button kind="quiet" onPress={() => { change({ do: 'remove-parcel', parcel: at }); }}>Remove the parcel</Button>}
      </header>
      {parcel.items.map((item, i) => (
        <ItemSheet key={item.key} item={item} parcel={at} at={i} label={itemLabel(firstItem + i)} wrong={wrong} onlyOne={parcel.items.length === 1} change={change} />
      ))}
    </section>
  );
}
