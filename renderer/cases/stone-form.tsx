import { useState } from 'react';
import type { ItemView, StoneSummary } from '../../app/contract/cases.ts';
import type { ColourClass } from '../../app/domain/colour-class.ts';
import { formatCarat, parseCarat } from '../../app/domain/weight.ts';
import { COLOUR_OPTIONS } from '../intake/colour-options.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { useAsk, useChange } from '../queries.ts';
import { EstimateFields } from '../weights/estimate-fields.tsx';

/** A stone's own facts: where it sits, shape, size, weight, colour class. */
export function StoneForm({ item, stone, onClose }: { readonly item: ItemView; readonly stone: StoneSummary | null; readonly onClose: () => void }) {
  const mounted = stone?.mounted ?? item.kind === 'jewellery';
  const [position, setPosition] = useState(stone?.position ?? '');
  const [shape, setShape] = useState(stone?.shape ?? '');
  const [measurements, setMeasurements] = useState(stone?.measurements ?? '');
  const [weight, setWeight] = useState(stone?.weight ? formatCarat(stone.weight) : '');
  const [colourClass, setColourClass] = useState<ColourClass>(stone?.colourClass ?? 'colourless');
  const [own, setOwn] = useState<string | undefined>();
  const add = useChange('stones.add');
  const amend = useChange('stones.amend');
  const weights = useAsk('weights.ofItem', mounted && stone ? { itemId: item.id } : null);
  const error = add.error ?? amend.error;
  const wrong = error?.failure.fields ?? {};
  const submit = () => {
    const units = weight.trim() === '' ? null : parseCarat(weight);
    setOwn(units && !units.ok ? units.error : undefined);
    if (units && !units.ok) return;
    const facts = { position, shape, measurements, colourClass, weight: units ? units.value : null };
    if (stone) amend.mutate({ stoneId: stone.id, ...facts }, { onSuccess: onClose });
    else add.mutate({ itemId: item.id, mounted, ...facts }, { onSuccess: onClose });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', own, error);
  return (
    <Dialog asks title={stone ? `Stone ${stone.label}` : `A stone of item ${item.label}`} onClose={onClose} width={mounted && stone ? 640 : 460} footer={<Button kind="main" keys="Mod+Enter" isDisabled={add.isPending || amend.isPending} onPress={submit}>Keep</Button>}>
      <Field label="Where it sits, or how to find it" value={position} onChange={setPosition} refusal={wrong['position']} autoFocus />
      <div className="fields-two">
        <Field label="Shape and cut" value={shape} onChange={setShape} refusal={wrong['shape']} />
        <Field label="Measured, mm" mono value={measurements} onChange={setMeasurements} refusal={wrong['measurements']} />
        {mounted ? <p className="quiet">Mounted: it can’t be weighed by itself.{stone ? '' : ' Keep it, then open it again to estimate its weight.'}</p> : <Field label="Weight" mono suffix="ct" value={weight} onChange={setWeight} error={own ?? wrong['weight']} />}
        <Choice<ColourClass> label="Colour class" value={colourClass} onChange={setColourClass} options={COLOUR_OPTIONS} />
      </div>
      {mounted && stone && weights.data ? <EstimateFields stone={stone} estimate={weights.data.stones.find((one) => one.stoneId === stone.id)?.estimate ?? null} closedBack={item.setting === 'closed-back'} /> : null}
      {error && Object.keys(wrong).length === 0 ? <Trouble {...error.failure} /> : null}
    </Dialog>
  );
}
