import { useState } from 'react';
import type { StoneFolder } from '../../app/contract/work.ts';
import { CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { checkConclusion } from '../../app/conclusions/check-conclusion.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { LeaveSheet } from '../look/leave-sheet.tsx';
import { ConclusionChoice } from './conclusion-choice.tsx';
import './conclude.css';

/** A person concludes: the rules' proposal in view, free to depart from it with a written reason. */
export function ConcludeSheet({ folder, onClose }: { readonly folder: StoneFolder; readonly onClose: () => void }) {
  const { stone, proposal, findings } = folder;
  const proposed = proposal.reasons.join(' ');
  const [conclusion, setConclusion] = useState<ConclusionId>(proposal.conclusion);
  const [reasons, setReasons] = useState(proposed);
  const [departure, setDeparture] = useState('');
  const [leaving, setLeaving] = useState(false);
  const conclude = useChange('conclusions.conclude');
  const notes = useNotes();
  const departs = conclusion !== proposal.conclusion;
  // The same check as behind the door, so that a refusal is seen before anything is sent.
  const allowed = checkConclusion({ conclusion, departure: departure.trim() === '' ? '…' : departure, proposed: proposal.conclusion, findings });
  const wrong = conclude.error?.failure.fields ?? {};
  const submit = () => {
    if (conclude.isPending || leaving) return;
    conclude.mutate({ stoneId: stone.id, conclusion, reasons, departure }, { onSuccess: () => { notes.say(`${stone.label} is concluded; a second person confirms it now.`); onClose(); } });
  };
  const close = () => { if (reasons !== proposed || departure.trim() !== '') setLeaving(true); else onClose(); };
  useKey('Mod+Enter', submit, !leaving);
  return (
    <>
      <Dialog title={`Conclude ${stone.label}`} width={860} onClose={close} footer={(
        <>
          <span className="quiet grow">Kept under your name with {proposal.rules}. A second person confirms it before a report can be issued.</span>
          <Button kind="main" keys="Mod+Enter" isPending={conclude.isPending} onPress={submit}>Conclude</Button>
        </>
      )}>
        <div className="conclude">
          <div className="conclude-left">
            <ConclusionChoice value={conclusion} proposed={proposal.conclusion} onChange={(next) => { setConclusion(next); conclude.reset(); }} />
          </div>
          <div className="conclude-right">
            {allowed.ok ? null : <Trouble {...allowed.error} />}
            <Field label="Reasons, in sentences that can be printed" lines={9} value={reasons} onChange={setReasons} refusal={wrong['reasons']} autoFocus />
            {departs ? <Field label={`Why it departs from “${CONCLUSION_WORDS[proposal.conclusion]}”`} lines={3} value={departure} onChange={setDeparture} refusal={wrong['departure']} hint="The rules propose otherwise; the reason is kept and printed." /> : null}
            {proposal.against.length > 0 ? <div><p className="label">Speaks against the proposal</p><ul className="conclude-list">{proposal.against.map((s) => <li key={s}>{s}</li>)}</ul></div> : null}
            {proposal.missing.length > 0 ? <div><p className="label">Missing</p><ul className="conclude-list">{proposal.missing.map((s) => <li key={s}>{s}</li>)}</ul></div> : null}
            {conclude.error && Object.keys(wrong).length === 0 ? <Trouble {...conclude.error.failure} /> : null}
          </div>
        </div>
      </Dialog>
      {leaving ? <LeaveSheet onStay={() => { setLeaving(false); }} onLeave={onClose} /> : null}
    </>
  );
}
