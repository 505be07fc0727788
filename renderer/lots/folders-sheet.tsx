import { useState } from 'react';
import type { LotView } from '../../app/contract/lots.ts';
import { OUTCOME_SHORT, type LotOutcome } from '../../app/lots/lot-outcome.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Empty, Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { Glyph } from '../look/glyph.tsx';
import { useNotes } from '../look/notes.tsx';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';

type Props = { readonly lot: LotView; readonly standing: ReadonlyMap<number, LotOutcome>; readonly tied: ReadonlyMap<string, number>; readonly onClose: () => void };

/** Takes over what the folders of single stones conclude, each under its number in the lot. */
export function FoldersSheet({ lot, standing, tied, onClose }: Props) {
  const concluded = lot.folders.filter((one) => one.outcome !== null);
  const waiting = lot.folders.filter((one) => one.waits);
  const [numbers, setNumbers] = useState<Readonly<Record<string, string>>>(() => Object.fromEntries(concluded.map((one) => [one.stoneId, String(tied.get(one.stoneId) ?? '')])));
  const keep = useChange('lots.enter');
  const notes = useNotes();
  const wrong = (text: string): string | undefined => {
    const number = readNumber(text);
    if (number === undefined) return undefined;
    return Number.isInteger(number) && number >= 1 && number <= (lot.count ?? 0) ? undefined : `Numbers go from 1 to ${lot.count ?? 0}.`;
  };
  const entries = concluded.flatMap((one) => {
    const text = numbers[one.stoneId] ?? '';
    const number = readNumber(text);
    if (number === undefined || wrong(text) || (tied.get(one.stoneId) === number && standing.get(number) === one.outcome)) return [];
    return [{ number, outcome: one.outcome, was: standing.get(number) ?? null, stoneId: one.stoneId }];
  });
  const submit = () => {
    if (entries.length === 0) return;
    keep.mutate({ itemId: lot.itemId, source: 'folder', entries, note: '' }, { onSuccess: () => { notes.say(`${entries.length} taken over from folders.`); onClose(); } });
  };
  useKey('Mod+Enter', submit);
  return (
    <Dialog title={`Stones of lot ${lot.label} with folders of their own`} onClose={onClose} width={560} footer={<Button kind="main" keys="Mod+Enter" isDisabled={entries.length === 0 || keep.isPending} onPress={submit}>Take over</Button>}>
      {waiting.length === 0 ? null : <p className="second">{waiting.length === 1 ? `${waiting[0]!.label} is` : `${waiting.map((one) => one.label).join(', ')} are`} concluded and can be taken over once a second person has answered, who states theirs first.</p>}
      {concluded.length === 0 && waiting.length === 0 ? <Empty title="No folder has a conclusion yet"><p>A stone that is tested by itself gets a folder on the page of its item. When it is concluded there, its outcome can be taken over here.</p></Empty> : null}
      {concluded.map((one) => (
        <div key={one.stoneId} className="lot-folder">
          <span className="row gap8"><Glyph of={one.outcome!} /><span><span className="mono">{one.label}</span> {OUTCOME_SHORT[one.outcome!]}<span className="quiet">{one.confirmed ? '' : ', waits for the second person'}</span></span></span>
          <Field label={`Number of ${one.label} in the lot`} mono value={numbers[one.stoneId] ?? ''} onChange={(text) => { setNumbers({ ...numbers, [one.stoneId]: text }); }} error={wrong(numbers[one.stoneId] ?? '')} />
        </div>
      ))}
      {keep.error ? <Trouble {...keep.error.failure} /> : null}
    </Dialog>
  );
}
