import { useMemo, useState } from 'react';
import { notKeptWords } from '../drafts/not-kept-words.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { focusSoon } from '../look/focus-soon.ts';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useChange } from '../queries.ts';
import { View } from '../shell/view.tsx';
import { ClientField } from './client-field.tsx';
import { DueField } from './due-field.tsx';
import { IntakeMargin } from './intake-margin.tsx';
import { emptyIntake, hasContent, type IntakeForm, type ItemKind } from './intake-state.ts';
import { intakeToInput, type FieldSentences } from './intake-to-input.ts';
import { ParcelSheet } from './parcel-sheet.tsx';
import { TakenIn } from './taken-in.tsx';
import { useIntakeDraft } from './use-intake-draft.ts';
import './intake.css';

const NONE: FieldSentences = {};
const PLACES = 'intake-places';

function stillWrong(refused: FieldSentences, form: IntakeForm): FieldSentences {
  const now = intakeToInput(form);
  return now.ok ? NONE : Object.fromEntries(Object.entries(now.error).filter(([path]) => path in refused));
}

/** One hand-over on one sheet: client, parcels, items, stones. Kept as a draft until it is taken in. */
export default function IntakeView() {
  const { me, laboratory } = useHouse();
  const draft = useIntakeDraft();
  const { form, change } = draft;
  const [refused, setRefused] = useState<FieldSentences>(NONE);
  const [asking, setAsking] = useState(false);
  const [round, setRound] = useState(0);
  const takeIn = useChange('cases.takeIn');
  // What was refused and is still wrong: a sentence goes when its field is put right, none comes before the next try.
  const own = useMemo(() => (refused === NONE ? NONE : stillWrong(refused, form)), [refused, form]);
  const wrong: FieldSentences = { ...takeIn.error?.failure.fields, ...own };
  const last = form.parcels.length - 1;

  useFocusWrong('.intake', refused, takeIn.error);

  const submit = () => {
    const input = intakeToInput(form);
    if (!input.ok) { setRefused(input.error); return; }
    setRefused(NONE);
    takeIn.mutate(input.value, { onSuccess: () => { void draft.forget(); } });
  };
  // What was added is what is written next.
  const addItem = (kind: ItemKind) => {
    change({ do: 'add-item', parcel: last, kind });
    focusSoon(`[data-path="parcels.${last}.items.${form.parcels[last]?.items.length ?? 0}"] .item-grid input`);
  };
  const addParcel = () => {
    change({ do: 'add-parcel' });
    focusSoon(`[aria-label="Parcel ${last + 2}"] .parcel-seal input`);
  };
  const clear = () => { setAsking(false); setRefused(NONE); takeIn.reset(); change({ do: 'all', form: emptyIntake(form.place) }); void draft.forget(); setRound(round + 1); };
  useKey('Mod+Enter', submit, !takeIn.isSuccess);
  useKey('Alt+S', () => { addItem('loose'); });
  useKey('Alt+J', () => { addItem('jewellery'); });
  useKey('Alt+O', () => { addItem('lot'); });
  useKey('Alt+P', addParcel);

  if (draft.reading) return <View title="Take in a case"><Working what="Looking for a kept draft" /></View>;
  if (takeIn.isSuccess) return <TakenIn taken={takeIn.data} onAnother={clear} />;

  const labels = form.parcels.map((p, i) => ({ from: form.parcels.slice(0, i).reduce((n, q) => n + q.items.length, 0), parcel: p }));
  return (
    <View over={draft.failing ? <span className="warn">{notKeptWords(draft.failing)}</span> : draft.restored ? 'Half-filled, kept from before' : 'Kept as you type'} title="Take in a case" actions={(
      <>
        {hasContent(form) ? <Button kind="quiet" onPress={() => { setAsking(true); }}>Clear</Button> : null}
        <Button kind="main" keys="Mod+Enter" isPending={takeIn.isPending} onPress={submit}>Take it in</Button>
      </>
    )}>
      <div className="intake" key={round}>
        <div className="intake-sheet">
          <div className="intake-head">
            <ClientField client={form.client} wrong={wrong} autoFocus={form.client.name === ''} onChange={(client) => { change({ do: 'client', client }); }} />
            <div className="stack gap8">
              <Field label="The client asks" value={form.asks} onChange={(value) => { change({ do: 'set', field: 'asks', value }); }} error={wrong['asks']} />
              <DueField value={form.dueOn} onChange={(value) => { change({ do: 'set', field: 'dueOn', value }); }} error={wrong['dueOn']} />
            </div>
            <div className="stack gap8">
              <Field label="Put where" value={form.place} onChange={(value) => { change({ do: 'set', field: 'place', value }); }} error={wrong['place']} placeholder="safe, tray 2" list={PLACES} />
              <datalist id={PLACES}>{laboratory.settings.places.map((place) => <option key={place} value={place} />)}</datalist>
              <Field label="Brought by" value={form.broughtBy} onChange={(value) => { change({ do: 'set', field: 'broughtBy', value }); }} error={wrong['broughtBy']} placeholder="the client, or the courier’s name" />
            </div>
          </div>
          {labels.map(({ from, parcel }, p) => (
            <ParcelSheet key={parcel.key} parcel={parcel} at={p} firstItem={from} only={form.parcels.length === 1} wrong={wrong} change={change} />
          ))}
          <Field label="Remarks on the whole case" lines={2} value={form.remarks} onChange={(value) => { change({ do: 'set', field: 'remarks', value }); }} error={wrong['remarks']} />
          <div className="row gap8 intake-adds">
            <Button keys="Alt+S" onPress={() => { addItem('loose'); }}>Loose stone</Button>
            <Button keys="Alt+J" onPress={() => { addItem('jewellery'); }}>Jewellery</Button>
            <Button keys="Alt+O" onPress={() => { addItem('lot'); }}>Lot</Button>
            <span className="intake-gap" />
            <Button keys="Alt+P" onPress={addParcel}>Another parcel</Button>
          </div>
          {takeIn.error && Object.keys(wrong).length === 0 ? <Trouble {...takeIn.error.failure} /> : null}
        </div>
        <IntakeMargin form={form} wrong={wrong} receivedBy={me?.name ?? 'nobody yet'} picturesTooLarge={draft.picturesTooLarge} />
      </div>
      {asking ? (
        <Dialog title="Clear the sheet?" role="alertdialog" width={420} onClose={() => { setAsking(false); }} footer={<><Button onPress={() => { setAsking(false); }}>Keep it</Button><Button kind="danger" autoFocus onPress={clear}>Clear it</Button></>}>
          <p>Everything typed on this sheet goes, the kept draft too.</p>
        </Dialog>
      ) : null}
    </View>
  );
}
