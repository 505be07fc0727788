import { useState } from 'react';
import type { SpectrumView } from '../../app/contract/work.ts';
import type { AnalysisParameters } from '../../app/spectra/analysis.ts';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';

const text = (value: number | null | undefined): string => (value === null || value === undefined ? '' : String(value));

/** What the analysis was told, and a way to tell it better. The earlier analysis stays on record. */
export function ParametersForm({ spectrum, parameters }: { readonly spectrum: SpectrumView; readonly parameters: AnalysisParameters }) {
  const [laser, setLaser] = useState(text(parameters.laserNm));
  const [kelvin, setKelvin] = useState(text(parameters.temperatureK));
  const [resolution, setResolution] = useState(text(parameters.resolution));
  const [scale, setScale] = useState(text(parameters.calibrationErrorNm));
  const [own, setOwn] = useState<Readonly<Record<string, string>>>({});
  const analyse = useChange('runs.analyse');
  const notes = useNotes();
  const wrong: Readonly<Record<string, string>> = { ...analyse.error?.failure.fields, ...own };
  const errorOf = (key: string): string | undefined => wrong[key] ?? wrong[`parameters.${key}`];

  const submit = () => {
    const numbers = { laserNm: readNumber(laser), temperatureK: readNumber(kelvin), resolution: readNumber(resolution), calibrationErrorNm: readNumber(scale) };
    const faults = Object.fromEntries(Object.entries(numbers).filter(([, n]) => Number.isNaN(n)).map(([key]) => [key, 'Write a number, for instance 532.1.']));
    setOwn(faults);
    if (Object.keys(faults).length > 0) return;
    analyse.mutate({ spectrumId: spectrum.id, parameters: { method: parameters.method, ...numbers, scale: parameters.scale } }, { onSuccess: () => { notes.say('Analysed anew; findings that no longer hold are marked.'); } });
  };
  return (
    <form className="panel-body" onSubmit={(e) => { e.preventDefault(); submit(); }}>
      <div className="parameters">
        <Field label="Laser, calibrated" mono suffix="nm" value={laser} onChange={setLaser} error={errorOf('laserNm')} />
        <Field label="Stone’s temperature" mono suffix="K" value={kelvin} onChange={setKelvin} error={errorOf('temperatureK')} />
        <Field label="Resolution (FWHM)" mono suffix={parameters.method === 'infrared' || parameters.method === 'raman' ? 'cm⁻¹' : 'nm'} value={resolution} onChange={setResolution} error={errorOf('resolution')} />
        <Field label="Scale may be off by" mono suffix="nm" value={scale} onChange={setScale} error={errorOf('calibrationErrorNm')} />
        <Button type="submit" isPending={analyse.isPending}>Analyse again</Button>
      </div>
      {spectrum.analysis ? <p className="quiet">Pipeline {spectrum.analysis.result.pipeline}, tables {spectrum.analysis.result.tables}. The earlier analysis and its decisions stay on record.</p> : null}
      {analyse.error && Object.keys(wrong).length === 0 ? <Trouble {...analyse.error.failure} /> : null}
    </form>
  );
}
