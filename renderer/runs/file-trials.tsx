import { useRef } from 'react';
import type { FileTrial } from '../../app/contract/work.ts';
import { STATABLE_X_UNITS, type StatableXUnit } from '../../app/spectra/spectrum.ts';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { shortDigest } from '../look/time.ts';
import { sizeWords, type IncomingFile } from './incoming-file.ts';
import { stateUnit } from './state-unit.ts';
import { asksUnit, blockWords, formatWords, STATABLE_WORDS } from './trial-words.ts';
import type { FileTrials } from './use-file-trials.ts';
import { useShownOnArrival } from './use-shown-on-arrival.ts';
import { withLine } from './with-line.ts';

const FEW_BLOCKS = 4;

function TrialLines({ trial }: { readonly trial: FileTrial }) {
  const more = trial.blocks.length - FEW_BLOCKS;
  return (
    <>
      {trial.blocks.slice(0, FEW_BLOCKS).map((block, i) => (
        <p key={i} className="second">{trial.blocks.length > 1 ? `${i + 1}. ${block.title ? `${block.title}: ` : ''}` : ''}{blockWords(block)}</p>
      ))}
      {more > 0 ? <p className="quiet">and {more} more curves</p> : null}
      {trial.alreadyIn ? <p className="warn">The same bytes are already kept: {trial.alreadyIn.run}, “{trial.alreadyIn.name}”. Keeping them again makes a second run of one measurement.</p> : null}
      {trial.warnings.map((warning) => <p key={`${warning.code}${warning.line ?? ''}${warning.message}`} className="warn">{withLine(warning)}</p>)}
      {trial.error ? (
        <>
          <p className="warn trial-refused">{withLine(trial.error)}</p>
          <p className="quiet">Nothing of it is read. The file itself is kept with the run, byte for byte.</p>
        </>
      ) : null}
    </>
  );
}

function TrialRow({ file, trial, error, unitFrom, onUnit, onRemove }: {
  readonly file: IncomingFile; readonly trial: FileTrial | undefined; readonly error: string | undefined; readonly unitFrom: string | undefined;
  readonly onUnit: (unit: StatableXUnit) => void; readonly onRemove: () => void;
}) {
  return (
    <li className={`trial ${trial?.error ? 'trial-bad' : ''}`}>
      <div className="trial-head">
        <span className="trial-name" title={file.name}>{file.name}</span>
        <span className="quiet">{trial ? formatWords(trial.format) : 'reading …'} · {sizeWords(file.bytes.byteLength)}</span>
        {trial ? <span className="mono quiet" title={`SHA-256 ${trial.sha256}`}>{shortDigest(trial.sha256)}</span> : null}
        <span className="grow" />
        <button type="button" className="word-button" aria-label={`Leave out ${file.name}`} onClick={onRemove}>Leave out</button>
      </div>
      {trial ? <TrialLines trial={trial} /> : null}
      {trial && !trial.error && asksUnit(trial, file.xUnit !== undefined) ? (
        <Choice<StatableXUnit> className="trial-unit" label="The file does not say the unit of its first column. It is" value={file.xUnit ?? ''} placeholder="choose"
          error={error} hint={unitFrom === undefined ? 'Stated once: the instrument remembers it.' : `As stated for “${unitFrom}”, which came with it.`} onChange={onUnit} options={STATABLE_X_UNITS.map((unit) => ({ value: unit, label: STATABLE_WORDS[unit] }))} />
      ) : error ? <p className="field-error">{error}</p> : null}
    </li>
  );
}

/** The files of a run on trial: what was read of each before anything is kept. */
export function FileTrialList(p: {
  readonly files: readonly IncomingFile[]; readonly trials: FileTrials; readonly refused: readonly string[]; readonly errors: Readonly<Record<string, string>>;
  readonly onPicked: (files: readonly File[]) => void; readonly onFiles: (files: readonly IncomingFile[]) => void; readonly over: boolean; readonly reads: boolean; readonly error: string | undefined;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const place = useRef<HTMLElement>(null);
  // What became of new files must be seen: the cautions stand above and may fill the sheet.
  const { files, refused, reads, trials: { failure, trials } } = p;
  useShownOnArrival(place, files.length + refused.length, !reads || failure !== null || trials.size >= files.length);
  return (
    <section ref={place} className={`files ${p.over ? 'files-over' : ''}`} aria-label="Files">
      <div className="files-drop">
        <p>{p.over ? 'Let go: they are tried before anything is kept.' : p.files.length > 0 ? 'Drop more files anywhere on this sheet, or' : 'Drop the instrument’s files anywhere on this sheet, or'}</p>
        <Button onPress={() => { picker.current?.click(); }}>Pick files</Button>
        <input ref={picker} type="file" multiple className="hide" tabIndex={-1} aria-label="Files of this run" onChange={(e) => { p.onPicked([...e.target.files ?? []]); e.target.value = ''; }} />
      </div>
      {p.reads && p.files.length === 0 ? <p className="quiet">JCAMP-DX and columns of text are read. Every file is kept as it is, even one that can’t be read.</p> : null}
      {p.refused.map((sentence) => <p key={sentence} className="warn">{sentence}</p>)}
      {p.trials.failure ? <Trouble {...p.trials.failure} /> : null}
      {p.trials.working && p.trials.trials.size === 0 ? <Working what="Reading the files" /> : null}
      <ul className="trials">
        {p.files.map((file, i) => p.reads
          ? <TrialRow key={file.key} file={file} trial={p.trials.trials.get(file.key)} error={file.xUnit === undefined ? p.errors[`files.${i}.xUnit`] : undefined}
              onUnit={(xUnit) => { p.onFiles(stateUnit(p.files, file.key, xUnit, p.trials.trials)); }} unitFrom={p.files.find((f) => f.key === file.unitFrom)?.name} onRemove={() => { p.onFiles(p.files.filter((f) => f.key !== file.key)); }} />
          : (
            <li key={file.key} className="trial"><div className="trial-head"><span className="trial-name">{file.name}</span><span className="quiet">kept beside the observation · {sizeWords(file.bytes.byteLength)}</span><span className="grow" />
              <button type="button" className="word-button" onClick={() => { p.onFiles(p.files.filter((f) => f.key !== file.key)); }}>Leave out</button></div></li>
          ))}
      </ul>
      {p.error ? <p className="field-error">{p.error}</p> : null}
    </section>
  );
}
