import { useState } from 'react';
import { checkNomenclature } from '../../app/report/nomenclature.ts';
import { TEXT_KIND_INFO, TEXT_KINDS, type TextKind } from '../../app/report/texts/text-kinds.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { showMoment } from '../look/time.ts';
import { useAsk, useChange } from '../queries.ts';
import { WordList } from '../reports/builder/word-notes.tsx';
import { useHouse } from './house-context.tsx';

/** The laboratory's own words on its reports: each change is a new version, and the older ones stay readable. */
export function TextsForm() {
  const [kind, setKind] = useState<TextKind>('scope');
  const texts = useAsk('houseTexts.list', {}, { keep: true });
  const now = texts.data?.current.find((one) => one.kind === kind);
  return (
    <section className="section protocols" aria-label="Texts of reports">
      <h2>Texts of reports</h2>
      <Choice label="Text" value={kind} onChange={setKind} options={TEXT_KINDS.map((one) => ({ value: one, label: TEXT_KIND_INFO[one].title }))} />
      <p className="quiet">{TEXT_KIND_INFO[kind].tells}</p>
      {texts.isError ? <Trouble {...texts.error.failure} /> : null}
      {now ? <TextForm key={`${kind} ${now.version}`} kind={kind} version={now.version} text={now.text} /> : null}
      <Versions kind={kind} />
    </section>
  );
}

function TextForm({ kind, version, text: before }: { readonly kind: TextKind; readonly version: number; readonly text: string }) {
  const [text, setText] = useState(before);
  const [note, setNote] = useState('');
  const { laboratory } = useHouse();
  const words = checkNomenclature(text, laboratory.settings.readers, [laboratory.name]).map((remark) => ({ ...remark, field: kind, elsewhere: false }));
  const write = useChange('houseTexts.write');
  const notes = useNotes();
  const wrong = write.error?.failure.fields ?? {};
  const keep = () => { write.mutate({ kind, text, note }, { onSuccess: (kept) => { notes.say(`${TEXT_KIND_INFO[kind].title}, version ${kept.version}, is printed from now on.`); } }); };
  return (
    <>
      <Field label={`${TEXT_KIND_INFO[kind].title}, ${version === 0 ? 'as it came' : `version ${version}`}`} lines={5} value={text} onChange={setText} refusal={wrong['text']} />
      {words.length > 0 ? <WordList words={words} /> : null}
      <Field label="Why the text is changed" value={note} onChange={setNote} refusal={wrong['note']} />
      {write.error && Object.keys(wrong).length === 0 ? <Trouble {...write.error.failure} /> : null}
      <div><Button isPending={write.isPending} onPress={keep}>Keep as version {version + 1}</Button></div>
    </>
  );
}

function Versions({ kind }: { readonly kind: TextKind }) {
  const { laboratory } = useHouse();
  const versions = useAsk('houseTexts.list', {}, { keep: true }).data?.versions.filter((one) => one.kind === kind) ?? [];
  if (versions.length === 0) return null;
  return (
    <details>
      <summary>{versions.length === 1 ? 'One version' : `${versions.length} versions`}</summary>
      <ul className="rows">
        {versions.map((one) => <li key={one.version}><p>Version {one.version}, {showMoment(one.at, laboratory.zone)}, {one.by}: {one.note}</p><p className="second">{one.text || 'empty'}</p></li>)}
      </ul>
    </details>
  );
}
