import { useState } from 'react';
import type { InstrumentView } from '../../app/contract/work.ts';
import { METHOD_IDS, METHODS, type MethodId } from '../../app/domain/method.ts';
import { STATABLE_X_UNITS, type StatableXUnit } from '../../app/spectra/spectrum.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Check, Choice } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useFocusWrong } from '../look/use-focus-wrong.ts';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';

const DEFAULT_CHECK_DAYS = '30';
const text = (n: number | undefined) => (n === undefined ? '' : String(n));

/** Name, methods, what it remembers, how often it must be checked. */
export function InstrumentForm({ instrument, onClose }: { readonly instrument: InstrumentView | null; readonly onClose: () => void }) {
  const [name, setName] = useState(instrument?.name ?? '');
  const [serial, setSerial] = useState(instrument?.serial ?? '');
  const [place, setPlace] = useState(instrument?.place ?? '');
  const [methods, setMethods] = useState<readonly MethodId[]>(instrument?.methods ?? []);
  const [days, setDays] = useState(instrument ? String(instrument.checkEveryDays) : DEFAULT_CHECK_DAYS);
  const [laser, setLaser] = useState(text(instrument?.remembers.laserNm));
  const [kelvin, setKelvin] = useState(text(instrument?.remembers.temperatureK));
  const [resolution, setResolution] = useState(text(instrument?.remembers.resolution));
  const [xUnit, setXUnit] = useState<StatableXUnit | ''>(instrument?.remembers.xUnit ?? '');
  const [active, setActive] = useState(instrument?.active ?? true);
  const [own, setOwn] = useState<Readonly<Record<string, string>>>({});
  const save = useChange('instruments.save');
  const wrong: Readonly<Record<string, string>> = { ...save.error?.failure.fields, ...own };

  const submit = () => {
    const numbers = { checkEveryDays: readNumber(days), laserNm: readNumber(laser), temperatureK: readNumber(kelvin), resolution: readNumber(resolution) };
    const faults = Object.fromEntries(Object.entries(numbers).filter(([, n]) => Number.isNaN(n)).map(([k]) => [k, 'Write a number, for instance 532.1.']));
    if (numbers.checkEveryDays === undefined) faults['checkEveryDays'] = 'Write a number of days.';
    setOwn(faults);
    if (Object.keys(faults).length > 0) return;
    const remembers = { ...instrument?.remembers, laserNm: numbers.laserNm, temperatureK: numbers.temperatureK, resolution: numbers.resolution, xUnit: xUnit || undefined };
    save.mutate({ id: instrument?.id ?? null, name, serial, place, methods: [...methods], checkEveryDays: Math.round(numbers.checkEveryDays ?? 30), active, remembers }, { onSuccess: onClose });
  };
  useKey('Mod+Enter', submit);
  useFocusWrong('.dialog', own, save.error);
  return (
    <Dialog asks title={instrument ? instrument.name : 'A new instrument'} onClose={onClose} width={640} footer={<Button kind="main" keys="Mod+Enter" isPending={save.isPending} onPress={submit}>Keep</Button>}>
      <Field label="Name, as the bench calls it" value={name} onChange={setName} error={wrong['name']} autoFocus />
      <div className="fields-two">
        <Field label="Serial or inventory number" value={serial} onChange={setSerial} error={wrong['serial']} />
        <Field label="Where it stands" value={place} onChange={setPlace} error={wrong['place']} />
      </div>
      <fieldset className="instrument-methods">
        <legend className="label">Methods</legend>
        {METHOD_IDS.map((m) => <Check key={m} label={METHODS[m].name} checked={methods.includes(m)} onChange={(on) => { setMethods(on ? [...methods, m] : methods.filter((x) => x !== m)); }} />)}
        {wrong['methods'] ? <span className="field-error">{wrong['methods']}</span> : null}
      </fieldset>
      <div className="fields-four">
        <Field label="Laser, calibrated" mono suffix="nm" value={laser} onChange={setLaser} error={wrong['laserNm'] ?? wrong['remembers.laserNm']} />
        <Field label="Stone’s temperature" mono suffix="K" value={kelvin} onChange={setKelvin} error={wrong['temperatureK'] ?? wrong['remembers.temperatureK']} />
        <Field label="Resolution (FWHM)" mono value={resolution} onChange={setResolution} error={wrong['resolution'] ?? wrong['remembers.resolution']} />
        <Field label="Check every" mono suffix="days" value={days} onChange={setDays} error={wrong['checkEveryDays']} />
      </div>
      <Choice<StatableXUnit> label="Unit of its files’ first column, where they do not say it" value={xUnit} onChange={setXUnit} placeholder="its files say it" options={STATABLE_X_UNITS.map((u) => ({ value: u, label: u }))} />
      {instrument ? <Check label="In use" checked={active} onChange={setActive} /> : null}
      {save.error && Object.keys(wrong).length === 0 ? <Trouble {...save.error.failure} /> : null}
    </Dialog>
  );
}
