import { useCallback, useRef, useState } from 'react';
import { batchToCsv, batchToJson } from '../../app/batch/write-batch.ts';
import { METHODS } from '../../app/domain/method.ts';
import { ANALYSABLE, analysisParameters, type AnalysableMethod } from '../../app/spectra/analysis.ts';
import { STATABLE_X_UNITS, type StatableXUnit } from '../../app/spectra/spectrum.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Empty, Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { readNumber } from '../look/read-number.ts';
import { saveFile } from '../look/save-file.ts';
import { STATABLE_WORDS } from '../runs/trial-words.ts';
import { useWindowDrop } from '../runs/use-window-drop.ts';
import { View } from '../shell/view.tsx';
import { BatchTable } from './batch-table.tsx';
import { entriesOf, filesOfEntries, filesOfPicker, type BatchFile } from './gather-entries.ts';
import { useBatch } from './use-batch.ts';
import './batch.css';

/** Analyses a folder of files at once, to look at and to take out; nothing of it enters the casebook. */
export default function BatchView() {
  const [method, setMethod] = useState<AnalysableMethod>('photoluminescence');
  const [laser, setLaser] = useState('');
  const [kelvin, setKelvin] = useState('');
  const [resolution, setResolution] = useState('');
  const [xUnit, setXUnit] = useState<StatableXUnit | ''>('');
  const [wrong, setWrong] = useState<Readonly<Record<string, string>>>({});
  const [files, setFiles] = useState<readonly BatchFile[]>([]);
  const [analysedAs, setAnalysedAs] = useState<AnalysableMethod>('photoluminescence');
  const folder = useRef<HTMLInputElement>(null);
  const several = useRef<HTMLInputElement>(null);
  const batch = useBatch();
  const { start, stop, phase, rows } = batch;

  const run = useCallback((chosen: readonly BatchFile[]) => {
    const numbers = { laserNm: readNumber(laser), temperatureK: readNumber(kelvin), resolution: readNumber(resolution) };
    const told = analysisParameters.safeParse({ method, ...numbers });
    setWrong(told.success ? {} : Object.fromEntries(told.error.issues.map((issue) => [String(issue.path[0]), 'Write a number within its limits, for instance 532.1.'])));
    setFiles(chosen);
    if (!told.success || chosen.length === 0) return;
    setAnalysedAs(method);
    start(chosen, told.data, xUnit || undefined);
  }, [method, laser, kelvin, resolution, xUnit, start]);
  // Folders too: the browser tells what is in them only while the drop is handled.
  useWindowDrop((transfer) => { void filesOfEntries(entriesOf(transfer)).then(run); });
  useKey('Escape', stop, phase === 'running');
  useKey('Mod+Enter', () => { run(files); }, files.length > 0 && phase !== 'running');

  const failed = rows.filter((row) => row.error !== null).length;
  const save = (kind: 'csv' | 'json') => { saveFile(`analysed.${kind}`, kind === 'csv' ? 'text/csv' : 'application/json', kind === 'csv' ? batchToCsv(rows) : batchToJson(rows)); };
  return (
    <View over="Nothing of it is kept: to keep a curve, add it as a test of a stone" title="Analyse a folder"
      actions={(
        <>
          {rows.length > 0 ? <><Button onPress={() => { save('csv'); }}>Table, CSV</Button><Button onPress={() => { save('json'); }}>Table, JSON</Button></> : null}
          {phase === 'running' ? <Button kind="main" keys="Escape" onPress={stop}>Stop</Button> : <Button kind="main" onPress={() => { folder.current?.click(); }}>Choose a folder</Button>}
        </>
      )}>
      <div className="page batch">
        <div className="batch-settings">
          <Choice<AnalysableMethod> label="Method" value={method} onChange={setMethod} options={ANALYSABLE.map((m) => ({ value: m, label: METHODS[m].name }))} />
          <Field label="Laser, calibrated" mono suffix="nm" value={laser} onChange={setLaser} error={wrong['laserNm']} />
          <Field label="Stone’s temperature" mono suffix="K" placeholder="295" value={kelvin} onChange={setKelvin} error={wrong['temperatureK']} />
          <Field label="Resolution (FWHM)" mono suffix={method === 'infrared' || method === 'raman' ? 'cm⁻¹' : 'nm'} value={resolution} onChange={setResolution} error={wrong['resolution']} />
          <Choice<StatableXUnit> label="Unit, where files do not say it" value={xUnit} onChange={setXUnit} placeholder="the files say it" options={STATABLE_X_UNITS.map((u) => ({ value: u, label: STATABLE_WORDS[u] }))} />
          <Button onPress={() => { several.current?.click(); }}>Choose files</Button>
          {files.length > 0 && phase !== 'running' ? <Button keys="Mod+Enter" onPress={() => { run(files); }}>Analyse again</Button> : null}
        </div>
        <input ref={folder} type="file" className="hide" tabIndex={-1} aria-label="Folder to analyse" {...{ webkitdirectory: '' }} onChange={(e) => { run(filesOfPicker(e.target.files ?? [])); e.target.value = ''; }} />
        <input ref={several} type="file" multiple className="hide" tabIndex={-1} aria-label="Files to analyse" onChange={(e) => { run(filesOfPicker(e.target.files ?? [])); e.target.value = ''; }} />
        {batch.failure ? <Trouble {...batch.failure} /> : null}
        {phase === 'nothing' ? (
          <Empty title="No files yet"><p>Drop a folder anywhere on this page, or choose one. Every file that holds a curve is read and analysed; the table says what each shows.</p></Empty>
        ) : (
          <>
            <div className="row gap12" role="status">
              <progress className="grow" max={Math.max(1, batch.total)} value={batch.done} aria-label="Files analysed" />
              <span className="mono">{batch.done} of {batch.total} files</span>
              <span className="quiet">{phase === 'stopped' ? 'stopped' : ''}{failed > 0 ? ` ${failed} not analysed` : ''}</span>
            </div>
            <BatchTable rows={rows} method={analysedAs} />
          </>
        )}
      </div>
    </View>
  );
}
