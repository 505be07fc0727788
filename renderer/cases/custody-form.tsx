import { useState } from 'react';
import type { ItemView } from '../../app/contract/cases.ts';
import type { Input } from '../../app/contract/index.ts';
import { parseCarat, parseGram } from '../../app/domain/weight.ts';
import { useKey } from '../keys/keymap.ts';
import { custodyWords } from '../ledgers/custody-words.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';

type Line = 'from' | 'to' | 'place' | 'seal' | 'weight' | 'note';
export type CustodyAction = { readonly event: Input<'custody.append'>['event']; readonly name: string; readonly title: string; readonly asks: readonly Line[]; readonly needs: readonly Line[] };

export const CUSTODY_ACTIONS: readonly CustodyAction[] = [
  { event: 'weighed', name: 'Weigh', title: 'Weigh', asks: ['weight', 'note'], needs: ['weight'] },
  { event: 'sealed', name: 'Seal', title: 'Seal', asks: ['seal', 'weight', 'place', 'note'], needs: ['seal'] },
  { event: 'opened', name: 'Open', title: 'Open the seal', asks: ['seal', 'weight', 'note'], needs: [] },
  { event: 'moved', name: 'Move', title: 'Move', asks: ['place', 'note'], needs: ['place'] },
  { event: 'handed-over', name: 'Hand over', title: 'Hand over', asks: ['from', 'to', 'place', 'weight', 'note'], needs: ['to'] },
  { event: 'returned', name: 'Return', title: 'Return to the client', asks: ['to', 'weight', 'note'], needs: ['to'] },
];

const NAMES: Readonly<Record<Line, string>> = { from: 'From', to: 'To', place: 'Where to', seal: 'Seal number', weight: 'Weight', note: 'Remark' };

/** One entry of the custody ledger, asking only what it needs. It can't be taken back: a mistake is followed by an entry that says so. */
export function CustodyForm({ action, item, onClose }: { readonly action: CustodyAction; readonly item: ItemView; readonly onClose: () => void }) {
  const [lines, setLines] = useState<Readonly<Partial<Record<Line, string>>>>({ seal: action.event === 'opened' ? item.custody.seal : '' });
  const [own, setOwn] = useState<Readonly<Record<string, string>>>({});
  const append = useChange('custody.append');
  const notes = useNotes();
  const wrong: Readonly<Record<string, string>> = { ...append.error?.failure.fields, ...own };
  const submit = () => {
    const faults: Record<string, string> = {};
    for (const line of action.needs) if (!lines[line]?.trim()) faults[line] = `${NAMES[line]} must be written.`;
    const typed = lines.weight?.trim() ?? '';
    const weight = typed === '' ? null : (item.weightUnit === 'ct' ? parseCarat : parseGram)(typed);
    if (weight && !weight.ok) faults['weight'] = weight.error;
    setOwn(faults);
    if (Object.keys(faults).length > 0) return;
    const text = Object.fromEntries(action.asks.filter((l) => l !== 'weight' && lines[l]?.trim()).map((l) => [l, lines[l]?.trim()]));
    append.mutate({ itemId: item.id, event: action.event, ...text, ...(weight?.ok ? { weight: weight.value } : {}) }, {
      onSuccess: (entry) => {
        if (entry.content.differs) notes.complain({ message: `${item.label}: ${custodyWords(entry.content)}`, next: 'Weigh again; if it stays, ask what happened before anything else is done, and write it down.' });
        else notes.say(`${item.label}: ${custodyWords(entry.content)}`);
        onClose();
      },
    });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', own, append.error);
  return (
    <Dialog title={`${action.title}: item ${item.label}`} onClose={onClose} width={440} footer={<Button kind="main" keys="Mod+Enter" isDisabled={append.isPending} onPress={submit}>Write it down</Button>}>
      {action.asks.map((line, i) => (
        <Field key={line} label={NAMES[line]} value={lines[line] ?? ''} autoFocus={i === 0} mono={line === 'weight' || line === 'seal'} suffix={line === 'weight' ? item.weightUnit : undefined}
          lines={line === 'note' ? 2 : undefined} error={wrong[line]} onChange={(value) => { setLines({ ...lines, [line]: value }); }} />
      ))}
      {action.event === 'returned' ? <p className="warn">This closes the item’s custody: nothing more can be written for it.{lines.weight?.trim() ? '' : ' Without a weight nobody can show later that what went out is what came in.'}</p> : null}
      <p className="quiet">Entries can’t be changed afterwards. A mistake is put right by a further entry that says so.</p>
      {append.error && Object.keys(wrong).length === 0 ? <Trouble {...append.error.failure} /> : null}
    </Dialog>
  );
}
