import { useState } from 'react';
import type { LotView } from '../../app/contract/lots.ts';
import { AQLS, COMPARED_AQLS, INSPECTION_LEVELS, type Aql, type InspectionLevel } from '../../app/lots/acceptance-plan.ts';
import { DRAWN_WAYS, planInput, type DrawnWay, type PlanAim, type PlanInput } from '../../app/lots/lot-record.ts';
import { makePlan } from '../../app/lots/make-plan.ts';
import { aimSentence, DRAWN_WORDS } from '../../app/lots/statement-words.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice, Segmented } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { readNumber } from '../look/read-number.ts';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';
import { DrawnList } from './drawn-list.tsx';

const AIMS: readonly { value: PlanAim['is']; label: string }[] = [
  { value: 'detect', label: 'find at least one' }, { value: 'acceptance', label: 'accept or refuse' }, { value: 'all', label: 'test all' }, { value: 'own', label: 'own number' },
];

const freshSeed = (): number => crypto.getRandomValues(new Uint32Array(1))[0]!;

/** How many stones to test and how they are drawn, with the reason; the size follows as one types. */
export function PlanForm({ lot, mayPlan }: { readonly lot: LotView; readonly mayPlan: boolean }) {
  const { laboratory } = useHouse();
  const before = lot.plan?.content;
  const [is, setIs] = useState<PlanAim['is']>(before?.aim.is ?? 'detect');
  const [percent, setPercent] = useState(String(before?.aim.is === 'detect' ? before.aim.percent : 5));
  const [level, setLevel] = useState<InspectionLevel>(before?.aim.is === 'acceptance' ? before.aim.level : 'II');
  const [aql, setAql] = useState(String(before?.aim.is === 'acceptance' ? before.aim.aql : 1));
  const [size, setSize] = useState(before?.aim.is === 'own' ? String(before.aim.size) : '');
  const [confidence, setConfidence] = useState(String(before?.confidence ?? laboratory.settings.lotConfidence));
  const [sides, setSides] = useState<PlanInput['sides']>(before?.sides ?? 'upper');
  const [drawn, setDrawn] = useState<DrawnWay>(before?.drawn ?? 'list');
  const [seed, setSeed] = useState(() => String(before?.seed ?? freshSeed()));
  const [method, setMethod] = useState(before?.method ?? '');
  const [reason, setReason] = useState('');
  const [asked, setAsked] = useState(false);
  const keep = useChange('lots.plan');
  const notes = useNotes();

  const aim = is === 'detect' ? { is, percent: readNumber(percent) } : is === 'acceptance' ? { is, level, aql: Number(aql) } : is === 'own' ? { is, size: readNumber(size) } : { is };
  const wanted = { aim, confidence: readNumber(confidence), sides, drawn, seed: drawn === 'list' ? readNumber(seed) ?? null : null, reason, method };
  const parsed = planInput.safeParse({ ...wanted, reason: reason.trim() === '' ? '–' : reason });
  const made = parsed.success && lot.count !== null ? makePlan(lot.count, parsed.data) : null;
  const faults: Record<string, string> = parsed.success ? {} : Object.fromEntries(parsed.error.issues.map((issue) => [issue.path.join('.'), 'Write a number within its limits.']));
  if (made && !made.ok) faults[made.error.field] = made.error.message;
  if (asked && reason.trim() === '') faults['reason'] = 'Write why this plan was chosen; it is printed.';
  useFocusWrong('.lot-form', asked ? faults['reason'] : undefined, keep.error);
  const submit = () => {
    setAsked(true);
    if (!parsed.success || !made?.ok || reason.trim() === '') return;
    keep.mutate({ itemId: lot.itemId, ...parsed.data, reason }, { onSuccess: () => { notes.say('Plan kept.'); setReason(''); setAsked(false); }, onError: (e) => { if (!e.failure.fields) notes.complain(e.failure); } });
  };
  useKey('Mod+Enter', submit, mayPlan);
  if (lot.count === null) return <p className="second">Count the lot first: the plan depends on the number of stones.</p>;
  return (
    <form className="lot-form" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      <div className="row gap12"><span className="label">What for</span><Segmented label="What the plan is for" value={is} onChange={setIs} options={AIMS} /></div>
      <div className="fields-four">
        {is === 'detect' ? <Field label="If at least so many are grown" mono suffix="%" value={percent} onChange={setPercent} error={faults['aim.percent']} /> : null}
        {is === 'acceptance' ? <Choice<InspectionLevel> label="Inspection level" value={level} onChange={setLevel} options={INSPECTION_LEVELS.map((value) => ({ value, label: value }))} /> : null}
        {is === 'acceptance' ? <Choice label="AQL, per cent" value={aql} onChange={setAql} options={AQLS.map((value) => ({ value: String(value), label: `${value}${COMPARED_AQLS.includes(value) ? '' : ' (from memory)'}` }))} hint={COMPARED_AQLS.includes(Number(aql) as Aql) ? 'MIL-STD-105E, table II-A' : 'not compared with the printed table'} /> : null}
        {is === 'own' ? <Field label="Stones to test" mono value={size} onChange={setSize} error={faults['aim.size']} /> : null}
        <Field label="Confidence" mono suffix="%" value={confidence} onChange={setConfidence} error={faults['confidence']} />
        <Choice<PlanInput['sides']> label="What is stated" value={sides} onChange={setSides} options={[{ value: 'upper', label: 'at most so many' }, { value: 'both', label: 'between two numbers' }]} />
      </div>
      <div className="fields-two">
        <Choice<DrawnWay> label="How the stones are taken" value={drawn} onChange={setDrawn} options={DRAWN_WAYS.map((value) => ({ value, label: DRAWN_WORDS[value] }))}
          hint={drawn === 'chosen' || drawn === 'unknown' ? 'Nothing will follow for the untested stones.' : 'Printed with the results.'} />
        {drawn === 'list' ? <Field label="Starting number of the list" mono value={seed} onChange={setSeed} error={faults['seed']} suffix={<button type="button" className="lot-suffix" onClick={() => { setSeed(String(freshSeed())); }}>another</button>} hint="The same number draws the same list again." /> : null}
      </div>
      {made?.ok ? <p className="lot-plan-says">{aimSentence(made.value)}</p> : null}
      {is === 'detect' ? <p className="quiet">Exact, drawn without putting back (hypergeometric). It supposes that every laboratory-grown stone that is tested is recognised.</p> : null}
      {is === 'acceptance' ? <p className="quiet">Single sampling, normal inspection, of MIL-STD-105E, which ISO 2859-1 took over. The rules that switch between lots are not applied. Such plans are made for series of lots; for one lot the limits beside say more.</p> : null}
      {mayPlan ? (
        <>
          <Field label="How each stone is tested" value={method} onChange={setMethod} placeholder="method and instrument" hint="Printed with the results." />
          <Field label="Why this plan" lines={2} value={reason} onChange={setReason} error={faults['reason']} />
          {keep.error && !keep.error.failure.fields ? <Trouble {...keep.error.failure} /> : null}
          <div><Button kind="main" keys="Mod+Enter" type="submit" isPending={keep.isPending}>{lot.plan ? 'Keep as the new plan' : 'Keep the plan'}</Button></div>
        </>
      ) : null}
      {lot.plan ? <DrawnList lot={lot} plan={lot.plan.content} /> : null}
    </form>
  );
}
