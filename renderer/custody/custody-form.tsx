import { useState } from 'react';
import type { ItemView } from '../../app/contract/cases.ts';
import type { CustodyView } from '../../app/contract/custody.ts';
import { custodyWords } from '../../app/report/custody-words.ts';
import type { PhotoForm } from '../intake/intake-state.ts';
import { PhotoStrip } from '../intake/photo-strip.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { changesHands, type CustodyAction } from './custody-actions.ts';
import { custodyInput, type CustodyDraft } from './custody-draft.ts';
import { CustodyLines } from './custody-lines.tsx';
import { PrintForm } from './print-form.tsx';

/** What is known before anything is typed. */
function startOf(action: CustodyAction, item: ItemView): CustodyDraft {
  const { seal, place } = item.custody;
  return { outside: false, lines: { ...(action.event === 'opened' && { seal }), ...(action.event === 'seen' && { place, seal }) } };
}

/** One entry of the custody ledger, asking only what it needs. It can't be taken back: a mistake is followed by an entry that says so. */
export function CustodyForm({ action, item, onClose }: { readonly action: CustodyAction; readonly item: ItemView; readonly onClose: () => void }) {
  const [draft, setDraft] = useState(() => startOf(action, item));
  const [pictures, setPictures] = useState<readonly PhotoForm[]>([]);
  const [own, setOwn] = useState<Readonly<Record<string, string>>>({});
  const [written, setWritten] = useState<CustodyView | null>(null);
  const append = useChange('custody.append');
  const notes = useNotes();
  const wrong: Readonly<Record<string, string>> = { ...append.error?.failure.fields, ...own };
  const submit = () => {
    if (append.isPending || written !== null) return;
    const entry = custodyInput(action, draft, item.weightUnit);
    setOwn(entry.ok ? {} : entry.error);
    if (!entry.ok) return;
    append.mutate({ itemId: item.id, ...entry.value, photographs: pictures.map(({ key: _key, ...picture }) => ({ ...picture, caption: picture.caption || pictureCaption(action, draft) })) }, {
      onSuccess: (kept) => {
        if (kept.content.differs) notes.complain({ message: `${item.label}: ${custodyWords(kept.content)}`, next: 'Weigh again; if it stays, ask what happened before anything else is done, and write it down.' });
        else notes.say(`${item.label}: ${custodyWords(kept.content)}`);
        if (changesHands(kept.content.event)) setWritten(kept);
        else onClose();
      },
    });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', own, append.error);
  if (written) {
    return (
      <Dialog key="written" title="Written down" onClose={onClose} width={440} footer={<><PrintForm seqs={[written.seq]} /><Button kind="main" autoFocus onPress={onClose}>Done</Button></>}>
        <p>Entry {written.seq}: {custodyWords(written.content)}</p>
        <p className="quiet">The form lists the item with its seal and weight, and has a line for each hand to sign. It can be printed again from the custody entries.</p>
      </Dialog>
    );
  }
  return (
    <Dialog asks title={`${action.title}: item ${item.label}`} onClose={onClose} width={440} footer={<Button kind="main" keys="Mod+Enter" isPending={append.isPending} onPress={submit}>Write it down</Button>}>
      <CustodyLines action={action} draft={draft} wrong={wrong} weightUnit={item.weightUnit} onDraft={setDraft} />
      {action.pictures ? (
        <PhotoStrip photographs={pictures} onAdd={(added) => { setPictures([...pictures, ...added.map((one) => ({ ...one, key: crypto.randomUUID() }))].slice(0, MOST_PICTURES)); }}
          onChange={(at, value) => { setPictures(pictures.map((one, i) => (i === at ? { ...one, ...value } : one))); }} onRemove={(at) => { setPictures(pictures.filter((_, i) => i !== at)); }} />
      ) : null}
      {wrong['photographs'] ? <p className="field-error">{wrong['photographs']}</p> : null}
      {action.event === 'returned' ? <p className="warn">This closes the item’s custody: nothing more can be written for it.{draft.lines.weight?.trim() ? '' : ' Without a weight nobody can show later that what went out is what came in.'}</p> : null}
      <p className="quiet">Entries can’t be changed afterwards. A mistake is put right by a further entry that says so.</p>
      {append.error && Object.keys(wrong).length === 0 ? <Trouble {...append.error.failure} /> : null}
    </Dialog>
  );
}

/** The contract takes no more with one entry. */
const MOST_PICTURES = 5;

function pictureCaption(action: CustodyAction, { lines }: CustodyDraft): string {
  const seal = lines.seal?.trim() ? ` ${lines.seal.trim()}` : '';
  if (action.event === 'sealed') return `Seal${seal}, when it was put on`;
  return action.event === 'opened' ? `Seal${seal}, before it was opened` : `Seal${seal}, when it came back`;
}
