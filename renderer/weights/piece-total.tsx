import { useState } from 'react';
import type { PieceWeights } from '../../app/contract/lots.ts';
import { formatCarat, parseCarat } from '../../app/domain/weight.ts';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';

/** The estimates of a piece together, beside the total that was declared for it. */
export function PieceTotal({ itemId, weights }: { readonly itemId: string; readonly weights: PieceWeights }) {
  const [editing, setEditing] = useState(false);
  const [text, setText] = useState(weights.declared?.weight ? formatCarat(weights.declared.weight) : '');
  const [note, setNote] = useState(weights.declared?.note ?? '');
  const [wrong, setWrong] = useState<string | undefined>();
  const declare = useChange('weights.declare');
  const notes = useNotes();
  const submit = () => {
    if (declare.isPending) return;
    const parsed = text.trim() === '' ? null : parseCarat(text);
    setWrong(parsed && !parsed.ok ? parsed.error : undefined);
    if (parsed && !parsed.ok) return;
    declare.mutate({ itemId, weight: parsed ? parsed.value : null, note }, { onSuccess: () => { notes.say('Declared total kept.'); setEditing(false); } });
  };
  return (
    <div className="piece-total">
      <div className="row gap12"><p className={`grow ${weights.total.agrees === false ? 'warn' : 'second'}`}>{weights.total.sentence}</p>{editing ? null : <Button kind="quiet" onPress={() => { setEditing(true); }}>Declared total</Button>}</div>
      {editing ? (
        <form className="piece-declared" onSubmit={(e) => { e.preventDefault(); submit(); }} onKeyDown={(e) => { if (e.key === 'Escape') setEditing(false); }}>
          <Field label="Total weight, as declared" mono suffix="ct" value={text} onChange={setText} error={wrong} autoFocus />
          <Field label="Where it stands" value={note} onChange={setNote} placeholder="invoice, engraving …" />
          <Button type="submit" isPending={declare.isPending}>Keep</Button><Button kind="quiet" onPress={() => { setEditing(false); }}>Leave it</Button>
        </form>
      ) : null}
      {declare.error ? <Trouble {...declare.error.failure} /> : null}
    </div>
  );
}
