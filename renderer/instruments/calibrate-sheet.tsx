import { useMemo, useState } from 'react';
import { scaleInOrder, type ScaleUse } from '../../app/calibration/calibration-words.ts';
import { CALIBRATION_STANDARDS, calibrationStandard } from '../../app/calibration/standards.ts';
import type { Input } from '../../app/contract/index.ts';
import type { InstrumentView } from '../../app/contract/work.ts';
import { STATABLE_X_UNITS, type StatableXUnit } from '../../app/spectra/spectrum.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice, Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useChange } from '../queries.ts';
import type { IncomingFile } from '../runs/incoming-file.ts';
import { STATABLE_WORDS } from '../runs/trial-words.ts';
import { CalibrationOutcome } from './calibration-outcome.tsx';
import { CurveFile } from './curve-file.tsx';
import { linesAsText, readOwnLines } from './own-lines.ts';
import { useTrial } from './use-trial.ts';

/** The lamp that an instrument of these methods is calibrated with first. */
function firstStandard(instrument: InstrumentView): string {
  if (instrument.methods.includes('infrared')) return 'polystyrene-infrared';
  return instrument.methods.includes('raman') && !instrument.methods.includes('photoluminescence') ? 'polystyrene-raman' : 'mercury-argon';
}

/** Calibrates the scale of an instrument with the curve of a lamp or a standard. */
export function CalibrateSheet({ instrument, onClose }: { readonly instrument: InstrumentView; readonly onClose: () => void }) {
  const [standardId, setStandardId] = useState(() => firstStandard(instrument));
  const [file, setFile] = useState<IncomingFile | null>(null);
  const [xUnit, setXUnit] = useState<StatableXUnit | ''>('');
  const [ownText, setOwnText] = useState<string | null>(null);
  const [use, setUse] = useState<ScaleUse>('correct');
  const [saidPassed, setSaidPassed] = useState<'yes' | 'no' | null>(null);
  const keep = useChange('instruments.calibrate');
  const standard = calibrationStandard(standardId)!;
  const own = useMemo(() => (ownText === null ? { lines: null, error: null } : readOwnLines(ownText, standard.lines[0]!.uncertainty)), [ownText, standard]);

  const input = useMemo((): Input<'instruments.tryCalibration'> | null => (file === null || own.error !== null ? null : {
    instrumentId: instrument.id, name: file.name, bytes: file.bytes, standard: standardId, ownLines: own.lines === null ? null : [...own.lines], ...(xUnit === '' ? {} : { xUnit }),
  }), [file, own, instrument.id, standardId, xUnit]);
  const { trial, failure, working } = useTrial('instruments.tryCalibration', input);
  const passed = saidPassed ?? (trial && scaleInOrder(trial.fit, use) ? 'yes' : 'no');
  const ready = trial !== null && input !== null && !keep.isPending;
  const submit = () => { if (ready) keep.mutate({ ...input, use, passed: passed === 'yes' }, { onSuccess: onClose }); };
  useKey('Mod+Enter', submit);
  return (
    <Dialog title={`Calibrate ${instrument.name}`} onClose={onClose} width={760} footer={<Button kind="main" keys="Mod+Enter" isDisabled={!ready} onPress={submit}>Keep the calibration</Button>}>
      <div className="fields-two">
        <Choice label="Lamp or standard" value={standardId} onChange={(value) => { setStandardId(value); setOwnText(null); }} options={CALIBRATION_STANDARDS.map((s) => ({ value: s.id, label: s.name }))} />
        <Choice<StatableXUnit> label="Unit of the file’s axis, where it does not say it" value={xUnit} onChange={setXUnit} placeholder={instrument.remembers.xUnit ? `as remembered: ${instrument.remembers.xUnit}` : 'the file says it'}
          options={STATABLE_X_UNITS.map((unit) => ({ value: unit, label: STATABLE_WORDS[unit] }))} />
      </div>
      {standard.fromMemory && ownText === null ? <p className="warn">These positions are indicative: the certificate of your {standard.name} governs. Put its positions in their place.</p> : null}
      {ownText === null
        ? <div className="row gap12"><p className="quiet grow">{standard.lines.length} positions: {standard.source}.</p><Button kind="quiet" onPress={() => { setOwnText(linesAsText(standard)); }}>Use a certificate’s positions</Button></div>
        : <Field label="Positions, one in a line; behind it the uncertainty where it is known" lines={6} mono value={ownText} onChange={setOwnText} error={own.error ?? undefined} />}
      <CurveFile what="the lamp’s curve" file={file} onFile={setFile} />
      {working ? <Working what="Looking for the lines" /> : null}
      {failure ? <Trouble {...failure} /> : null}
      {trial ? (
        <>
          <CalibrationOutcome trial={trial} use={use} />
          <div className="row gap12 calibration-choice"><span className="label">Later runs</span><Segmented<ScaleUse> label="Later runs" value={use} onChange={setUse} options={[{ value: 'correct', label: 'are corrected by it' }, { value: 'note', label: 'are left as they are' }]} />
            <span className="label">In order?</span><Segmented label="In order?" value={passed} onChange={setSaidPassed} options={[{ value: 'yes', label: 'in order' }, { value: 'no', label: 'not in order' }]} /></div>
          <p className="quiet">{use === 'correct' ? 'The instrument’s own files stay as they are; the analysis moves their positions by this scale and says so. If the instrument’s scale is set anew, calibrate again.' : 'The analysis then takes positions to be off by as much as was found.'} The calibration counts as a check of the instrument.</p>
        </>
      ) : null}
      {keep.error ? <Trouble {...keep.error.failure} /> : null}
    </Dialog>
  );
}
