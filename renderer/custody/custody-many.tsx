import { useState } from 'react';
import type { CustodyView, Whereabouts } from '../../app/contract/custody.ts';
import { CUSTODY_EVENT_WORDS } from '../../app/domain/custody-event.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { useNotes } from '../look/notes.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';
import { changesHands, type CustodyAction } from './custody-actions.ts';
import { custodyInput, type CustodyDraft } from './custody-draft.ts';
import { CustodyLines } from './custody-lines.tsx';
import { PrintForm } from './print-form.tsx';

const NAMED = 8;

function listed(items: readonly Whereabouts[]): string {
  const names = items.slice(0, NAMED).map((item) => `${item.caseNumber} / ${item.label}`).join(', ');
  return items.length > NAMED ? `${names} and ${items.length - NAMED} more` : names;
}

/** What the entry does not fit: an item that is out is not seen here, and one that is here is not taken back. */
function misfits(action: CustodyAction, items: readonly Whereabouts[]): string {
  if (action.event === 'seen' || action.event === 'moved') {
    const out = items.filter((item) => item.out !== null);
    return out.length === 0 ? '' : `${listed(out)}: out of the house on record. Take back what is here again; otherwise the entry says that its handing back was not recorded.`;
  }
  const here = action.event === 'taken-back' ? items.filter((item) => item.out === null) : [];
  return here.length === 0 ? '' : `${listed(here)}: not out of the house on record. The entry says so.`;
}

/** Entries of one hand-over belong on one form only where giver and taker are the same. */
function forms(entries: readonly CustodyView[]): readonly (readonly CustodyView[])[] {
  const groups = new Map<string, CustodyView[]>();
  for (const entry of entries) {
    const key = JSON.stringify([entry.content.from, entry.content.to]);
    groups.set(key, [...groups.get(key) ?? [], entry]);
  }
  return [...groups.values()];
}

/** The same entry for several items: all are written, or none. */
export function CustodyMany({ action, items, onClose, onWritten }: { readonly action: CustodyAction; readonly items: readonly Whereabouts[]; readonly onClose: () => void; readonly onWritten: () => void }) {
  const [draft, setDraft] = useState<CustodyDraft>({ outside: action.event === 'handed-over', lines: {} });
  const [own, setOwn] = useState<Readonly<Record<string, string>>>({});
  const [written, setWritten] = useState<readonly CustodyView[] | null>(null);
  const append = useChange('custody.appendMany');
  const notes = useNotes();
  const wrong: Readonly<Record<string, string>> = { ...append.error?.failure.fields, ...own };
  const submit = () => {
    if (append.isPending || written !== null) return;
    const entry = custodyInput(action, draft, null);
    setOwn(entry.ok ? {} : entry.error);
    if (!entry.ok) return;
    const { seal: _seal, weight: _weight, ...rest } = entry.value;
    append.mutate({ itemIds: items.map((item) => item.itemId), ...rest }, {
      onSuccess: (kept) => {
        notes.say(`${kept.length} ${kept.length === 1 ? 'item' : 'items'} ${CUSTODY_EVENT_WORDS[action.event]}.`);
        onWritten();
        if (changesHands(action.event)) setWritten(kept);
        else onClose();
      },
    });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', own, append.error);
  if (written) {
    return (
      <Dialog key="written" title="Written down" onClose={onClose} width={480} footer={<Button kind="main" autoFocus onPress={onClose}>Done</Button>}>
        {forms(written).map((entries) => (
          <p key={entries[0]!.seq} className="row gap8">
            <span className="grow">{entries.length === 1 ? '1 item' : `${entries.length} items`} from {entries[0]!.content.from ?? 'the laboratory'} to {entries[0]!.content.to}</span>
            <PrintForm seqs={entries.map((entry) => entry.seq)} label="Print the form" />
          </p>
        ))}
      </Dialog>
    );
  }
  return (
    <Dialog asks title={`${action.title}: ${items.length === 1 ? 'one item' : `${items.length} items`}`} onClose={onClose} width={480} footer={<Button kind="main" keys="Mod+Enter" isPending={append.isPending} onPress={submit}>Write it down</Button>}>
      <p className="second">{listed(items)}</p>
      {misfits(action, items) === '' ? null : <p className="warn">{misfits(action, items)}</p>}
      <CustodyLines action={action} draft={draft} wrong={wrong} weightUnit={null} onDraft={setDraft} />
      <p className="quiet">One entry is written for each item; all of them, or none.</p>
      {append.error && Object.keys(wrong).length === 0 ? <Trouble {...append.error.failure} /> : null}
    </Dialog>
  );
}
