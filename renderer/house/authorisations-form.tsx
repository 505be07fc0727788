import { useState } from 'react';
import { TEMPLATE_KINDS, TEMPLATE_KIND_WORDS, type TemplateKind } from '../../app/report/sections/section.ts';
import { Button } from '../look/button.tsx';
import { Check, Choice } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { showDate } from '../look/time.ts';
import { useAsk, useChange } from '../queries.ts';
import { useHouse } from './house-context.tsx';

/** Who may issue which kinds of report, and since when. */
export function AuthorisationsForm() {
  const { people } = useHouse();
  const written = useAsk('authorisations.list', {}, { keep: true });
  const write = useChange('authorisations.write');
  const notes = useNotes();
  const [holderId, setHolder] = useState('');
  const [kinds, setKinds] = useState<readonly TemplateKind[]>([]);
  const [since, setSince] = useState('');
  const wrong = write.error?.failure.fields ?? {};
  const signers = people.filter((person) => person.active && person.roles.some((role) => role === 'appraiser' || role === 'manager'));
  const choose = (id: string) => {
    const now = written.data?.find((one) => one.holderId === id);
    setHolder(id);
    setKinds(now?.kinds ?? []);
    setSince(now?.since ?? '');
  };
  const keep = () => { write.mutate({ holderId, kinds: [...kinds], since, note: '' }, { onSuccess: () => { notes.say('Kept.'); } }); };
  return (
    <section className="section protocols" aria-label="Who may issue reports">
      <h2>Who may issue reports</h2>
      {written.data?.length === 0 ? <p className="quiet">Nothing is written down: every appraiser and manager may. As soon as one is named here, only those named may.</p> : null}
      <ul className="rows">
        {(written.data ?? []).map((one) => <li key={one.holderId}>{one.holder}: {one.kinds.length === 0 ? 'none' : one.kinds.map((kind) => TEMPLATE_KIND_WORDS[kind]).join(', ')}, since {showDate(one.since)}</li>)}
      </ul>
      <Choice label="Person" value={holderId} placeholder="Choose a person" onChange={choose} options={signers.map((person) => ({ value: person.id, label: person.name }))} error={wrong['holderId']} />
      <fieldset className="fields-ticks"><legend className="label">May issue reports on a</legend>
        {TEMPLATE_KINDS.map((kind) => <Check key={kind} label={TEMPLATE_KIND_WORDS[kind]} checked={kinds.includes(kind)} onChange={(on) => { setKinds(TEMPLATE_KINDS.filter((one) => (one === kind ? on : kinds.includes(one)))); }} />)}
      </fieldset>
      <Field label="Since" type="date" value={since} onChange={setSince} refusal={wrong['since']} />
      {write.error && Object.keys(wrong).length === 0 ? <Trouble {...write.error.failure} /> : null}
      <div><Button isDisabled={holderId === '' || write.isPending} onPress={keep}>Keep it</Button></div>
    </section>
  );
}
