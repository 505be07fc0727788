import type { ColourClass } from '../../app/domain/colour-class.ts';
import { Button } from '../look/button.tsx';
import { Choice, Segmented } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { COLOUR_OPTIONS } from './colour-options.ts';
import type { IntakeChange, ItemForm, ItemKind } from './intake-state.ts';
import type { FieldSentences } from './intake-to-input.ts';
import { PhotoStrip } from './photo-strip.tsx';
import { StoneRows } from './stone-rows.tsx';
import './intake.css';

const KINDS: readonly { readonly value: ItemKind; readonly label: string }[] = [{ value: 'loose', label: 'loose stone' }, { value: 'jewellery', label: 'jewellery' }, { value: 'lot', label: 'lot' }];

/** One thing that was handed over: what it is said to be, what it weighs, its stones, its state. */
export function ItemSheet(p: {
  readonly item: ItemForm; readonly parcel: number; readonly at: number; readonly label: string; readonly wrong: FieldSentences; readonly onlyOne: boolean;
  readonly change: (change: IntakeChange) => void;
}) {
  const { item, parcel, at } = p;
  const path = `parcels.${parcel}.items.${at}`;
  const set = (value: Partial<ItemForm>) => { p.change({ do: 'item', parcel, item: at, value }); };
  const turn = (kind: ItemKind) => {
    if (kind === item.kind) return;
    set({ kind, setting: '', weightUnit: kind === 'jewellery' ? 'g' : 'ct', count: '', stones: kind === 'lot' ? [] : item.stones.slice(0, kind === 'loose' ? 1 : undefined) });
    if (kind !== 'lot' && item.stones.length === 0) p.change({ do: 'add-stones', parcel, item: at, many: 1 });
  };
  const stone = item.stones[0];
  return (
    <section className="item-sheet" data-path={path} aria-label={`Item ${p.label}`}>
      <header className="row gap12">
        <h3 className="item-letter">{p.label}</h3>
        <Segmented<ItemKind> label="Kind of item" value={item.kind} onChange={turn} options={KINDS} />
        <span className="grow" />
        {p.onlyOne ? null : <Button kind="quiet" onPress={() => { p.change({ do: 'remove-item', parcel, item: at }); }}>Remove</Button>}
      </header>
      <div className="item-grid">
        <Field className="span-3" label="Declared as" value={item.declared} onChange={(declared) => { set({ declared }); }} error={p.wrong[`${path}.declared`]} placeholder={PLACEHOLDERS[item.kind]} />
        <Field label="Declared value" value={item.declaredValue} onChange={(declaredValue) => { set({ declaredValue }); }} error={p.wrong[`${path}.declaredValue`]} placeholder="EUR 2,400" />
        <div className="gross">
          <Field label="Gross weight" mono value={item.grossWeight} onChange={(grossWeight) => { set({ grossWeight }); }} error={p.wrong[`${path}.grossWeight`]} placeholder={item.weightUnit === 'ct' ? '1.0234' : '4.21300'} />
          <Segmented<'ct' | 'g'> label="Unit of weight" value={item.weightUnit} onChange={(weightUnit) => { set({ weightUnit }); }} options={[{ value: 'ct', label: 'ct' }, { value: 'g', label: 'g' }]} />
        </div>
        {item.kind === 'lot' ? <Field label="Stones counted" mono value={item.count} onChange={(count) => { set({ count }); }} error={p.wrong[`${path}.count`]} placeholder="340" /> : null}
        {item.kind === 'jewellery' ? (
          <Choice<'open-back' | 'closed-back'> label="Setting" value={item.setting} onChange={(setting) => { set({ setting }); }} error={p.wrong[`${path}.setting`]} placeholder="choose"
            options={[{ value: 'open-back', label: 'open back' }, { value: 'closed-back', label: 'closed back' }]} />
        ) : null}
        {item.kind === 'loose' && stone ? (
          <>
            <Field label="Shape and cut" value={stone.shape} onChange={(shape) => { p.change({ do: 'stone', parcel, item: at, stone: 0, value: { shape } }); }} placeholder="round brilliant" error={p.wrong[`${path}.stones.0.shape`]} />
            <Field label="Measured, mm" mono value={stone.measurements} onChange={(measurements) => { p.change({ do: 'stone', parcel, item: at, stone: 0, value: { measurements } }); }} placeholder="4.79 – 4.81 × 2.94" error={p.wrong[`${path}.stones.0.measurements`]} />
            <Choice<ColourClass> label="Colour class" value={stone.colourClass} onChange={(colourClass) => { p.change({ do: 'stone', parcel, item: at, stone: 0, value: { colourClass } }); }} options={COLOUR_OPTIONS} />
          </>
        ) : null}
        <Field className="span-all" label="Condition, as received" value={item.condition} onChange={(condition) => { set({ condition }); }} error={p.wrong[`${path}.condition`]} placeholder="chips, wear, repairs, dirt; nothing noticed" />
      </div>
      {item.kind === 'jewellery' ? <StoneRows item={item} parcel={parcel} at={at} wrong={p.wrong} change={p.change} /> : null}
      {p.wrong[`${path}.stones`] ? <p className="field-error">{p.wrong[`${path}.stones`]}</p> : null}
      <PhotoStrip photographs={item.photographs}
        onAdd={(photographs) => { p.change({ do: 'add-photographs', parcel, item: at, photographs }); }}
        onChange={(n, value) => { set({ photographs: item.photographs.map((f, i) => (i === n ? { ...f, ...value } : f)) }); }}
        onRemove={(photograph) => { p.change({ do: 'remove-photograph', parcel, item: at, photograph }); }} />
      {item.photographs.map((f, i) => (p.wrong[`${path}.photographs.${i}.bytes`] ? <p key={f.key} className="field-error">{f.name}: {p.wrong[`${path}.photographs.${i}.bytes`]}</p> : null))}
    </section>
  );
}

const PLACEHOLDERS: Readonly<Record<ItemKind, string>> = {
  loose: 'diamond, round, about 1 ct, without papers', jewellery: 'ring, white gold, one centre stone and shoulders', lot: 'small stones, 0.9 to 1.1 mm, from stock',
};
