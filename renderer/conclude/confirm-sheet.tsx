import { useState } from 'react';
import type { ConclusionView, StoneFolder } from '../../app/contract/work.ts';
import { CONCLUSION_IDS, CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { useHouse } from '../house/house-context.tsx';
import { WhoWorks } from '../house/who-works.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice, Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { Glyph } from '../look/glyph.tsx';
import { useNotes } from '../look/notes.tsx';
import { showMoment } from '../look/time.ts';
import { useChange } from '../queries.ts';
import { LeaveSheet } from '../look/leave-sheet.tsx';
import './conclude.css';

type Answer = 'agrees' | 'disagrees';

const OUTCOMES = CONCLUSION_IDS.map((value) => ({ value, label: CONCLUSION_WORDS[value] }));
const UNSTATED = 'unstated';

/** The second person looks at the same findings and answers. Never the one who concluded. What they stated before the first was shown to them stands. */
export function ConfirmSheet({ folder, conclusion, onClose }: { readonly folder: StoneFolder; readonly conclusion: ConclusionView; readonly onClose: () => void }) {
  const { laboratory, me } = useHouse();
  const stated = folder.reading?.outcome ?? null;
  const [own, setOwn] = useState<ConclusionId | null>(null);
  const [answer, setAnswer] = useState<Answer>(stated === null || stated === conclusion.conclusion ? 'agrees' : 'disagrees');
  const [reason, setReason] = useState('');
  const [choosing, setChoosing] = useState(false);
  const [leaving, setLeaving] = useState(false);
  const confirm = useChange('conclusions.confirm');
  const notes = useNotes();
  const same = me?.id === conclusion.byId;
  const wrong = confirm.error?.failure.fields ?? {};
  const submit = () => {
    if (confirm.isPending || choosing || leaving) return;
    confirm.mutate({ conclusionId: conclusion.id, agrees: answer === 'agrees', reason, outcome: answer === 'disagrees' ? own : null }, { onSuccess: (answered) => { notes.say(answered.confirmation?.agrees ? `${folder.stone.label} is confirmed.` : `${folder.stone.label}: the disagreement is written down.`); onClose(); } });
  };
  const close = () => { if (reason.trim() !== '') setLeaving(true); else onClose(); };
  useKey('Mod+Enter', submit, !choosing && !leaving);
  const accepted = folder.findings.filter((finding) => finding.state === 'accepted');
  return (
    <>
      <Dialog title={`Answer to the conclusion of ${folder.stone.label}`} width={640} onClose={close} footer={(
        <>
          <span className="quiet grow">{me ? `You answer as ${me.name}.` : 'Nobody is chosen at this window.'}</span>
          <Button onPress={() => { setChoosing(true); }}>Someone else</Button>
          <Button kind="main" keys="Mod+Enter" isPending={confirm.isPending} onPress={submit}>{answer === 'agrees' ? 'Confirm' : 'Write the disagreement down'}</Button>
        </>
      )}>
        <div className="confirm-what">
          <h3><Glyph of={conclusion.conclusion} /> <span>{CONCLUSION_WORDS[conclusion.conclusion]}</span></h3>
          <p className="quiet">{conclusion.by}, {showMoment(conclusion.at, laboratory.zone)}</p>
          <p className="concluded-reasons">{conclusion.reasons}</p>
          {conclusion.departure ? <p className="second">Departs from the rules ({CONCLUSION_WORDS[conclusion.proposal.conclusion]}): {conclusion.departure}</p> : null}
          <p className="quiet">{accepted.length === 1 ? 'One finding' : `${accepted.length} findings`} accepted, {folder.runs.length === 1 ? 'one run' : `${folder.runs.length} runs`}. Look at the curves before you answer.</p>
        </div>
        {same && !confirm.error ? <Trouble message="You wrote this conclusion; a second person answers to it." next="Let a colleague sign in with “Someone else”." /> : null}
        {stated === null ? null : <p className="second">Your own conclusion, stated before this one was shown: {CONCLUSION_WORDS[stated]}. {stated === conclusion.conclusion ? '' : 'It is another one: write why you do not agree.'}</p>}
        <div><Segmented<Answer> label="Answer" value={answer} onChange={setAnswer} options={[{ value: 'agrees', label: 'I agree' }, { value: 'disagrees', label: 'I do not agree' }]} /></div>
        {answer === 'disagrees' && stated === null ? <Choice<ConclusionId | typeof UNSTATED> label="What you would conclude" value={own ?? UNSTATED} options={[{ value: UNSTATED, label: 'not stated' }, ...OUTCOMES]} onChange={(value) => { setOwn(value === UNSTATED ? null : value); }} error={wrong['outcome']} /> : null}
        <Field label={answer === 'agrees' ? 'Remark (if any)' : 'Why you do not agree'} lines={3} value={reason} onChange={setReason} error={wrong['reason']} autoFocus />
        {confirm.error && Object.keys(wrong).length === 0 ? <Trouble {...confirm.error.failure} /> : null}
      </Dialog>
      {choosing ? <WhoWorks onClose={() => { setChoosing(false); confirm.reset(); }} /> : null}
      {leaving ? <LeaveSheet onStay={() => { setLeaving(false); }} onLeave={onClose} /> : null}
    </>
  );
}
