import { useState } from 'react';
import type { KnownSampleView } from '../../app/contract/figures.ts';
import { CONCLUSION_IDS, CONCLUSION_WORDS, type ConclusionId } from '../../app/domain/conclusion.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Check, Choice, Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';

type From = 'stone' | 'hand';
type Named = { readonly id: string; readonly name: string };

/** One examination of a known sample: best as a stone of an ordinary case, linked after it was settled. */
export function TrialForm({ samples, people, instruments, today, onClose }: {
  readonly samples: readonly KnownSampleView[]; readonly people: readonly Named[]; readonly instruments: readonly Named[]; readonly today: string; readonly onClose: () => void;
}) {
  const usable = samples.filter((sample) => sample.withdrawn === null);
  const [from, setFrom] = useState<From>('stone');
  const [sampleId, setSampleId] = useState(usable[0]?.id ?? '');
  const [caseNumber, setCaseNumber] = useState('');
  const [stoneLabel, setStoneLabel] = useState('');
  const [outcome, setOutcome] = useState<ConclusionId | ''>('');
  const [examinerId, setExaminerId] = useState('');
  const [examinedOn, setExaminedOn] = useState(today);
  const [unchosen, setUnchosen] = useState(false);
  const [blind, setBlind] = useState(true);
  const [instrumentIds, setInstruments] = useState<readonly string[]>([]);
  const [remark, setRemark] = useState('');
  const byStone = useChange('trials.addFromStone');
  const byHand = useChange('trials.addByHand');
  const used = from === 'stone' ? byStone : byHand;
  const wrong = used.error?.failure.fields ?? {};
  const submit = () => {
    if (byStone.isPending || byHand.isPending) return;
    if (from === 'stone') byStone.mutate({ sampleId, caseNumber, stoneLabel, blind, remark, instrumentIds: [...instrumentIds] }, { onSuccess: onClose });
    else if (outcome === '' || examinerId === '') setUnchosen(true);
    else byHand.mutate({ sampleId, outcome, examinerId, examinedOn, blind, remark, instrumentIds: [...instrumentIds] }, { onSuccess: onClose });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', null, used.error);
  return (
    <Dialog asks title="Trial of a known sample" onClose={onClose} footer={<Button kind="main" keys="Mod+Enter" isPending={used.isPending} onPress={submit}>Enter the trial</Button>}>
      <Choice label="Sample" value={sampleId} options={usable.map(({ id, label }) => ({ value: id, label }))} onChange={setSampleId} />
      <div><Segmented<From> label="Outcome" value={from} onChange={setFrom} options={[{ value: 'stone', label: 'from a stone of a case' }, { value: 'hand', label: 'entered by hand' }]} /></div>
      {from === 'stone' ? (
        <>
          <p className="quiet">Let the sample come in like any other stone, and link it here once a second person agreed: the outcome, the examiner and the day are then those of the records. Only now does the casebook say that it was a known sample; from then on it is left out of the house’s other figures.</p>
          <div className="fields-two">
            <Field label="Case" mono value={caseNumber} onChange={setCaseNumber} error={wrong['caseNumber']} autoFocus placeholder="C-2026-0001" />
            <Field label="Stone" mono value={stoneLabel} onChange={setStoneLabel} error={wrong['stoneLabel']} placeholder="A-1" />
          </div>
        </>
      ) : (
        <div className="fields-two">
          <Choice<ConclusionId> label="It was said to be" placeholder="choose" error={unchosen && outcome === '' ? 'Choose what it was said to be.' : undefined} value={outcome} options={CONCLUSION_IDS.map((value) => ({ value, label: CONCLUSION_WORDS[value] }))} onChange={setOutcome} />
          <Choice label="Examiner" placeholder="choose" value={examinerId} options={people.map(({ id, name }) => ({ value: id, label: name }))} onChange={setExaminerId} error={unchosen && examinerId === '' ? 'Choose who examined it.' : wrong['examinerId']} />
          <Field label="Concluded on" type="date" value={examinedOn} onChange={setExaminedOn} error={wrong['examinedOn']} />
        </div>
      )}
      <Check label="the examiner did not know that it was a known sample" checked={blind} onChange={setBlind} />
      {wrong['blind'] ? <p className="warn" role="alert">{wrong['blind']} {used.error?.failure.next}</p> : null}
      {instruments.length === 0 ? null : (
        <fieldset className="trial-instruments">
          <legend className="label">Instruments that were used (if you know)</legend>
          {instruments.map(({ id, name }) => <Check key={id} label={name} checked={instrumentIds.includes(id)} onChange={(on) => { setInstruments(on ? [...instrumentIds, id] : instrumentIds.filter((one) => one !== id)); }} />)}
          {wrong['instrumentIds'] ? <p className="warn" role="alert">{wrong['instrumentIds']}</p> : null}
        </fieldset>
      )}
      <Field label="Remark (if any)" value={remark} onChange={setRemark} error={wrong['remark']} />
      {used.error && Object.keys(wrong).length === 0 ? <Trouble {...used.error.failure} /> : null}
    </Dialog>
  );
}
