import { useState } from 'react';
import type { LotView } from '../../app/contract/lots.ts';
import { formatCarat } from '../../app/domain/weight.ts';
import { sieveWords } from '../../app/lots/sieve-table.ts';
import { balanceOf } from '../../app/lots/split-balance.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';
import { BalanceSentences } from './balance-sentences.tsx';
import { partText, readPart, type PartText } from './part-fields.ts';

type SieveText = PartText & { readonly over: string; readonly through: string };
const OPEN = 'open';
const plateOf = (value: string): string | null => (value === OPEN ? null : value);

/** How many stones the lot holds, and how they divide by size. */
export function CountForm({ lot, mayCount }: { readonly lot: LotView; readonly mayCount: boolean }) {
  const { laboratory } = useHouse();
  const plates = laboratory.settings.sieves;
  const [count, setCount] = useState(lot.count === null ? '' : String(lot.count));
  const [rows, setRows] = useState<readonly SieveText[]>(() => (lot.counted?.sieves ?? []).map((one) => ({ ...partText(one), over: one.over ?? OPEN, through: one.through ?? OPEN })));
  const [note, setNote] = useState('');
  const [asked, setAsked] = useState(false);
  const keep = useChange('lots.count');
  const notes = useNotes();
  const counted = readNumber(count);
  const countError = counted === undefined || !Number.isInteger(counted) || counted < 1 ? 'Write how many stones the lot holds.' : undefined;
  const read = rows.map((row) => ({ row, part: readPart(row) }));
  const wrong = keep.error?.failure.fields ?? {};
  const balance = read.length > 0 ? balanceOf(read.map(({ part }) => part), { count: countError ? null : counted!, weight: lot.weight }, lot.tolerance, 'sizes') : null;
  const set = (i: number, change: Partial<SieveText>) => { setRows(rows.map((row, j) => (j === i ? { ...row, ...change } : row))); };
  const submit = () => {
    setAsked(true);
    if (countError || read.some(({ part }) => part.countError ?? part.weightError)) return;
    keep.mutate({ itemId: lot.itemId, count: counted!, note, sieves: read.map(({ row, part }) => ({ over: plateOf(row.over), through: plateOf(row.through), count: part.count, weight: part.weight })) },
      { onSuccess: () => { notes.say('Count kept.'); setNote(''); setAsked(false); } });
  };
  useKey('Mod+Enter', submit, mayCount);
  const options = (open: string) => [{ value: OPEN, label: open }, ...plates.map((one) => ({ value: one.plate, label: `${one.plate} · ${one.mm.toFixed(2)} mm` }))];
  return (
    <form className="lot-form" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      <div className="fields-four">
        <Field label="Stones in the lot" mono value={count} onChange={setCount} error={asked ? countError : undefined} disabled={!mayCount} />
        <div className="stack"><span className="label">Weight, as weighed at intake</span><p className="mono lot-weight">{lot.weight === null ? 'not weighed' : `${formatCarat(lot.weight)} ct`}</p></div>
        <div className="stack"><span className="label">Average</span><p className="mono lot-weight">{lot.weight === null || countError ? '–' : `${(lot.weight / 10_000 / counted!).toFixed(4)} ct`}</p></div>
      </div>
      <h2>Sizes by sieve</h2>
      {rows.length === 0 ? <p className="second">Not sieved. Add a size for each class that was set apart.</p> : null}
      {read.map(({ row, part }, i) => (
        <div key={i} className="lot-part lot-part-sieve" role="group" aria-label={`Size ${i + 1}`}>
          <Choice label="Stays on" value={row.over} onChange={(over) => { set(i, { over }); }} options={options('no plate')} error={wrong[`sieves.${i}`]} />
          <Choice label="Falls through" value={row.through} onChange={(through) => { set(i, { through }); }} options={options('no plate')} />
          <Field label="Stones" mono value={row.count} onChange={(text) => { set(i, { count: text }); }} error={part.countError} />
          <Field label="Weight" mono suffix="ct" value={row.weight} onChange={(text) => { set(i, { weight: text }); }} error={part.weightError} />
          <Button kind="quiet" aria-label={`Leave out ${sieveWords(plateOf(row.over), plateOf(row.through), plates)}`} onPress={() => { setRows(rows.filter((_, j) => j !== i)); }}>Leave out</Button>
        </div>
      ))}
      {mayCount ? <div><Button onPress={() => { setRows([...rows, { over: rows.at(-1)?.through ?? OPEN, through: OPEN, count: '', weight: '' }]); }}>Add a size</Button></div> : null}
      {balance ? <BalanceSentences balance={balance} /> : null}
      {mayCount ? (
        <>
          <Field label="Remark" value={note} onChange={setNote} placeholder="counted twice, by whom …" />
          {keep.error && Object.keys(wrong).length === 0 ? <Trouble {...keep.error.failure} /> : null}
          <div><Button kind="main" keys="Mod+Enter" type="submit" isPending={keep.isPending}>Keep the count</Button></div>
        </>
      ) : null}
      <p className="quiet">Plate numbers and holes are the house’s own set (House, “Lots and measures”): makers differ by a few hundredths of a millimetre; common practice, no source.</p>
    </form>
  );
}
