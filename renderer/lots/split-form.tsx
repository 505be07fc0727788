import { useState } from 'react';
import type { LotView } from '../../app/contract/lots.ts';
import type { LotFigures } from '../../app/lots/lot-statement.ts';
import { PART_SORTS, type LotPart } from '../../app/lots/lot-record.ts';
import { PART_SORT_WORDS } from '../../app/lots/statement-words.ts';
import { balanceOf } from '../../app/lots/split-balance.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { showMoment } from '../look/time.ts';
import { useChange } from '../queries.ts';
import { BalanceSentences } from './balance-sentences.tsx';
import { partText, readPart, type PartText } from './part-fields.ts';

type Sort = LotPart['sort'];
type Part = PartText & { readonly sort: Sort; readonly name: string };

/** Parts to begin with: those that the results make, with their counts. */
function fromFigures(figures: LotFigures | null): Part[] {
  if (figures === null) return [];
  const counts: readonly [Sort, number][] = [['passing', figures.counts.natural], ['referred', figures.undetermined], ['laboratory-grown', figures.grown], ['not-diamond', figures.notDiamond], ['untested', figures.untested]];
  return counts.filter(([, count]) => count > 0).map(([sort, count]) => ({ sort, name: '', count: String(count), weight: '' }));
}

/** The lot after it was split: counts and weights must add up. */
export function SplitForm({ lot, figures, maySplit }: { readonly lot: LotView; readonly figures: LotFigures | null; readonly maySplit: boolean }) {
  const { laboratory } = useHouse();
  const [parts, setParts] = useState<readonly Part[]>(() => (lot.split ? lot.split.parts.map((part) => ({ ...partText(part), sort: part.sort, name: part.name })) : fromFigures(figures)));
  const [note, setNote] = useState('');
  const [asked, setAsked] = useState(false);
  const keep = useChange('lots.split');
  const notes = useNotes();
  const read = parts.map((part) => ({ part, numbers: readPart(part) }));
  const balance = parts.length > 0 ? balanceOf(read.map(({ numbers }) => numbers), lot, lot.tolerance) : null;
  const set = (i: number, change: Partial<Part>) => { setParts(parts.map((part, j) => (j === i ? { ...part, ...change } : part))); };
  const missing = (text: string): string | undefined => (asked && text.trim() === '' ? 'Count this part.' : undefined);
  const submit = () => {
    setAsked(true);
    if (read.length === 0 || read.some(({ numbers }) => numbers.count === null || (numbers.countError ?? numbers.weightError))) return;
    keep.mutate({ itemId: lot.itemId, note, parts: read.map(({ part, numbers }) => ({ sort: part.sort, name: part.name, count: numbers.count!, weight: numbers.weight })) },
      { onSuccess: () => { notes.say('Parts kept.'); setNote(''); setAsked(false); } });
  };
  useKey('Mod+Enter', submit, maySplit);
  return (
    <form className="lot-form" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      {lot.split ? <p className="second">Split by {lot.split.by}, {showMoment(lot.split.at, laboratory.zone)}. {lot.split.note}</p> : <p className="second">When the lot is set apart into papers, count and weigh each: together they must be the lot again.</p>}
      {read.map(({ part, numbers }, i) => (
        <div key={i} className="lot-part" role="group" aria-label={`Part ${i + 1}`}>
          <Choice<Sort> label="Part" value={part.sort} onChange={(sort) => { set(i, { sort }); }} options={PART_SORTS.map((value) => ({ value, label: PART_SORT_WORDS[value] }))} />
          <Field label="Name, or where it goes" value={part.name} onChange={(name) => { set(i, { name }); }} />
          <Field label="Stones" mono value={part.count} onChange={(count) => { set(i, { count }); }} error={numbers.countError ?? missing(part.count)} />
          <Field label="Weight" mono suffix="ct" value={part.weight} onChange={(weight) => { set(i, { weight }); }} error={numbers.weightError} />
          <Button kind="quiet" aria-label={`Leave part ${i + 1} out`} onPress={() => { setParts(parts.filter((_, j) => j !== i)); }}>Leave out</Button>
        </div>
      ))}
      {maySplit ? <div><Button onPress={() => { setParts([...parts, { sort: 'other', name: '', count: '', weight: '' }]); }}>Add a part</Button></div> : null}
      {balance ? <BalanceSentences balance={balance} /> : null}
      {maySplit && parts.length > 0 ? (
        <>
          <Field label="Remark" value={note} onChange={setNote} />
          {keep.error ? <Trouble {...keep.error.failure} /> : null}
          <div><Button kind="main" keys="Mod+Enter" type="submit" isPending={keep.isPending}>Keep the parts</Button></div>
        </>
      ) : null}
    </form>
  );
}
