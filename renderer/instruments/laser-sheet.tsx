import { useMemo, useState } from 'react';
import type { Input } from '../../app/contract/index.ts';
import type { InstrumentView } from '../../app/contract/work.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';
import type { IncomingFile } from '../runs/incoming-file.ts';
import { CurveFile } from './curve-file.tsx';
import { useTrial } from './use-trial.ts';

/** Measures the true wavelength of an instrument's laser by the Raman line of a known diamond. */
export function LaserSheet({ instrument, onClose }: { readonly instrument: InstrumentView; readonly onClose: () => void }) {
  const [nominal, setNominal] = useState(instrument.remembers.laserNm === undefined ? '' : String(instrument.remembers.laserNm));
  const [file, setFile] = useState<IncomingFile | null>(null);
  const [passed, setPassed] = useState<'yes' | 'no'>('yes');
  const keep = useChange('instruments.calibrateLaser');
  const nominalNm = readNumber(nominal);
  const usable = nominalNm !== undefined && nominalNm >= 200 && nominalNm <= 1100;
  const input = useMemo((): Input<'instruments.tryLaser'> | null => (file === null || !usable ? null : { instrumentId: instrument.id, name: file.name, bytes: file.bytes, nominalNm }), [file, usable, nominalNm, instrument.id]);
  const { trial, failure, working } = useTrial('instruments.tryLaser', input);
  const ready = trial !== null && input !== null && !keep.isPending;
  const submit = () => { if (ready) keep.mutate({ ...input, passed: passed === 'yes' }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  return (
    <Dialog title={`Laser of ${instrument.name}`} onClose={onClose} width={640} footer={<Button kind="main" keys="Mod+Enter" isDisabled={!ready} onPress={submit}>Keep the wavelength</Button>}>
      <p className="quiet">Record a diamond that you know, without strain and at room temperature, and bring its curve with the wavelength axis. Its Raman line lies 1332.4 cm⁻¹ from the laser, whatever the laser is called.</p>
      <div className="fields-two"><Field label="Laser, as it is called" mono suffix="nm" value={nominal} onChange={setNominal} error={nominal !== '' && !usable ? 'Write a number from 200 to 1100, for instance 532.' : undefined} /></div>
      <CurveFile what="the known diamond’s curve" file={file} onFile={setFile} />
      {file !== null && nominal === '' ? <p className="warn">Write how the laser is called, so that its diamond line can be looked for.</p> : null}
      {working ? <Working what="Looking for the diamond line" /> : null}
      {failure ? <Trouble {...failure} /> : null}
      {trial ? (
        <section className="calibration-outcome" aria-label="What came out">
          <p>{trial.words}</p>
          {trial.scaled ? null : <p className="warn">The wavelength scale of this instrument was never calibrated, so 0.1 nm of it is counted into the uncertainty: calibrate it with a lamp first.</p>}
          <div className="row gap12 calibration-choice"><span className="label">In order?</span><Segmented label="In order?" value={passed} onChange={setPassed} options={[{ value: 'yes', label: 'in order' }, { value: 'no', label: 'not in order' }]} /></div>
          <p className="quiet">Kept as a check of the instrument; its next runs begin with this wavelength. Runs already recorded stay as they are.</p>
        </section>
      ) : null}
      {keep.error ? <Trouble {...keep.error.failure} /> : null}
    </Dialog>
  );
}
