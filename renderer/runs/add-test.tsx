import { useEffect, useMemo, useState } from 'react';
import type { RunView, StoneFolder } from '../../app/contract/work.ts';
import { METHODS, type Hazard, type MethodId } from '../../app/domain/method.ts';
import { hazardsOf } from '../../app/runs/hazards-of.ts';
import { notKeptWords } from '../drafts/not-kept-words.ts';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Segmented } from '../look/choice.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble, Working } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { useAsk, useChange } from '../queries.ts';
import { CautionNotice } from './caution-notice.tsx';
import { FileTrialList } from './file-trials.tsx';
import { guessMethod } from './guess-method.ts';
import { gatherFiles, type IncomingFile } from './incoming-file.ts';
import { LeaveSheet } from '../look/leave-sheet.tsx';
import { adviseMethods, orderHint } from './method-advice.ts';
import { MethodChoice } from './method-choice.tsx';
import { EMPTY_OBSERVATION, finishObservation, isEmptyObservation, type ObservationDraft } from './observation-draft.ts';
import { isObserved } from './observation-fields.ts';
import { ObservationForm } from './observation-form.tsx';
import { instrumentsFor, NO_SETTINGS, readSettings, rememberedSettings, type RunSettings } from './run-settings.ts';
import { RunSettingsForm } from './run-settings-form.tsx';
import { tallyFiles } from './tally-files.ts';
import { unitIsOpen } from './trial-words.ts';
import { useFileDrop } from './use-file-drop.ts';
import { useFileTrials } from './use-file-trials.ts';
import { useRunDraft, type RunDraft } from './use-run-draft.ts';
import './runs.css';

type How = 'files' | 'eye';
type Props = {
  readonly folder: StoneFolder; readonly method: MethodId | null; readonly dropped: readonly File[];
  readonly onClose: () => void; readonly onKept: (run: RunView) => void;
};

/** The method to begin with: the one asked for, else what the rules would like next, else the first that is possible. */
function firstMethod(folder: StoneFolder, asked: MethodId | null, hasFiles: boolean, possible: readonly MethodId[]): MethodId {
  const fits = (method: MethodId): boolean => possible.includes(method) && (!hasFiles || METHODS[method].yields === 'spectrum');
  if (asked !== null && possible.includes(asked)) return asked;
  return folder.proposal.nextTests.map((next) => next.method).find(fits) ?? possible.find(fits) ?? possible[0] ?? 'raman';
}

/** One more test of a stone: method, instrument, caution, then the instrument's files or what was seen. */
export function AddTest({ folder, method: asked, dropped, onClose, onKept }: Props) {
  const { stone, item } = folder;
  const notes = useNotes();
  const place = useMemo(() => ({ mounted: stone.mounted, setting: item.setting }), [stone.mounted, item.setting]);
  const advice = useMemo(() => adviseMethods(place, folder.runs), [place, folder.runs]);
  const [method, setMethod] = useState<MethodId>(() => firstMethod(folder, asked, dropped.length > 0, advice.filter((a) => a.impossible === null).map((a) => a.method)));
  const [how, setHow] = useState<How>('files');
  const list = useAsk('instruments.list', {});
  const instruments = useMemo(() => instrumentsFor(method, list.data ?? []), [method, list.data]);
  // undefined: nothing was chosen by hand, the first in order serves.
  const [chosenInstrument, setInstrument] = useState<string | null | undefined>(undefined);
  const instrumentId = chosenInstrument === null ? null : instruments.find((i) => i.id === chosenInstrument)?.id ?? instruments[0]?.id ?? null;
  const [typed, setTyped] = useState<Partial<RunSettings>>({});
  const settings: RunSettings = { ...NO_SETTINGS, ...rememberedSettings(instruments.find((i) => i.id === instrumentId)), ...typed };
  const [acknowledged, setAcknowledged] = useState<readonly Hazard[]>([]);
  const [files, setFiles] = useState<readonly IncomingFile[]>([]);
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [seen, setSeen] = useState<ObservationDraft>(EMPTY_OBSERVATION);
  const [note, setNote] = useState('');
  const [faults, setFaults] = useState<Readonly<Record<string, string>>>({});
  const [leaving, setLeaving] = useState(false);
  const record = useChange('runs.record');

  const byEye = isObserved(method) && (METHODS[method].yields === 'observation' || how === 'eye');
  const reads = METHODS[method].yields === 'spectrum';
  const trials = useFileTrials(folder.case.id, instrumentId, reads ? files : NO_FILES);
  const { numbers, faults: settingFaults } = readSettings(settings, method);
  const hazards = hazardsOf(method, numbers.temperatureK);
  const entered = files.length > 0 || !isEmptyObservation(seen) || note.trim() !== '' || Object.keys(typed).length > 0;

  const draft: RunDraft | null = useMemo(
    () => (isEmptyObservation(seen) && note.trim() === '' && Object.keys(typed).length === 0 ? null : { method, instrumentId, settings: { ...NO_SETTINGS, ...typed }, observation: seen, note }),
    [method, instrumentId, typed, seen, note],
  );
  const kept = useRunDraft(stone.id, draft);
  const [hadFiles] = useState(dropped.length > 0);
  useEffect(() => {
    if (!kept.before || asked !== null || hadFiles) return;
    setMethod(kept.before.method);
    setInstrument(kept.before.instrumentId);
    setTyped(Object.fromEntries(Object.entries(kept.before.settings).filter(([, text]) => text !== '')));
    setSeen(kept.before.observation);
    setNote(kept.before.note);
  }, [kept.before, asked, hadFiles]);

  const add = (list: readonly File[]) => {
    void gatherFiles(list).then((gathered) => {
      setFiles((now) => [...now, ...gathered.files]);
      setRefused(gathered.refused);
    });
  };
  const over = useFileDrop(add);
  // The files that opened this sheet are taken once.
  const [first] = useState(dropped);
  useEffect(() => { if (first.length > 0) void gatherFiles(first).then((gathered) => { setFiles(gathered.files); setRefused(gathered.refused); }); }, [first]);

  // A file that came without a method tells it by its units, until a person chooses.
  const [byHand, setByHand] = useState(asked !== null || dropped.length === 0);
  const guess = files.map((file) => guessMethod(trials.trials.get(file.key))).find((method) => method !== null) ?? null;
  useEffect(() => {
    if (byHand || guess === null || advice.some((a) => a.method === guess && a.impossible !== null)) return;
    setByHand(true);
    setMethod(guess);
  }, [byHand, guess, advice]);

  const choose = (next: MethodId) => {
    setByHand(true);
    if (next === method) return;
    setMethod(next);
    setInstrument(undefined);
    setSeen(EMPTY_OBSERVATION);
    setAcknowledged([]);
    setFaults({});
    record.reset();
  };
  const close = () => { if (entered && !record.isPending) setLeaving(true); else onClose(); };
  const leave = () => { void kept.forget(); onClose(); };

  const submit = () => {
    if (record.isPending || leaving) return;
    const found: Record<string, string> = { ...settingFaults };
    const observed = byEye && isObserved(method) ? finishObservation(method, seen, note) : null;
    if (observed && !observed.ok) Object.assign(found, observed.error);
    if (!byEye && files.length === 0) found['files'] = 'Add at least one file of the instrument.';
    if (hazards.some((hazard) => !acknowledged.includes(hazard))) found['cautions'] = 'Read the caution and confirm it.';
    files.forEach((file, i) => { if (reads && !byEye && unitIsOpen(trials.trials.get(file.key))) found[`files.${i}.xUnit`] = 'State the unit.'; });
    setFaults(found);
    if (Object.keys(found).length > 0) return;
    record.mutate({
      stoneId: stone.id, method, instrumentId, ...numbers, cautions: [...hazards], note: observed ? '' : note,
      observation: observed?.ok ? observed.value : null,
      files: files.map(({ name, bytes, xUnit }) => ({ name, bytes, ...(xUnit ? { xUnit } : {}) })),
    }, {
      onSuccess: (run) => {
        void kept.forget();
        notes.say(`${run.number} is kept: ${run.reads}.`);
        onKept(run);
      },
    });
  };
  useKey('Mod+Enter', submit, !leaving);

  const errors: Readonly<Record<string, string>> = { ...record.error?.failure.fields, ...settingFaults, ...faults };
  const hint = orderHint(method, folder.runs);
  const tally = reads ? tallyFiles(files, trials.trials, refused.length) : '';
  const wanted = useMemo(() => new Set(folder.proposal.nextTests.slice(0, NEXT_MARKED).map((next) => next.method)), [folder.proposal]);
  return (
    <>
      <Dialog title={`Add a test to ${stone.label}`} width={1020} onClose={close} footer={(
        <>
          <span className="quiet grow add-test-state">
            {kept.failing ? <><span className="warn">{notKeptWords(kept.failing)}</span>. </> : null}
            {faults['cautions'] ?? (record.isPending ? 'Keeping the files and analysing them …' : tally || 'Kept under your name with time, instrument and the digest of every file.')}
          </span>
          <Button kind="main" keys="Mod+Enter" isPending={record.isPending} onPress={submit}>Keep the run</Button>
        </>
      )}>
        <div className="add-test">
          <MethodChoice advice={advice} wanted={wanted} chosen={method} onChoose={choose} />
          <div className="add-test-form">
            <header><h3>{METHODS[method].name}</h3><span className="quiet">{METHODS[method].tells}</span></header>
            {kept.before && asked === null && !hadFiles ? <p className="quiet">What was typed here before is back; files must be dropped again.</p> : null}
            {hint ? <p className="order-hint">{hint}</p> : null}
            {list.isPending ? <Working what="Reading the instruments" /> : <RunSettingsForm method={method} instruments={instruments} instrumentId={instrumentId} onInstrument={setInstrument} settings={settings} errors={errors} onSetting={(key, text) => { setTyped({ ...typed, [key]: text }); }} />}
            <CautionNotice hazards={hazards} acknowledged={acknowledged} onAcknowledged={setAcknowledged} error={errors['cautions']} />
            {reads && isObserved(method) ? <div><Segmented<How> label="How it was judged" value={how} onChange={setHow} options={[{ value: 'files', label: 'files of the instrument' }, { value: 'eye', label: 'judged by eye' }]} /></div> : null}
            {byEye && isObserved(method) ? <ObservationForm method={method} draft={seen} onDraft={setSeen} faults={errors} /> : null}
            <FileTrialList files={files} trials={trials} refused={refused} errors={errors} onPicked={add} onFiles={setFiles} over={over} reads={reads} error={errors['files']} />
            <Field label="Remarks" lines={2} value={note} onChange={setNote} error={errors['note']} placeholder="what a colleague would need to repeat it" />
            {record.error ? <Trouble {...record.error.failure} /> : null}
          </div>
        </div>
      </Dialog>
      {leaving ? <LeaveSheet onStay={() => { setLeaving(false); }} onLeave={leave} /> : null}
    </>
  );
}

/** More marks than this would mark nothing. */
const NEXT_MARKED = 3;
const NO_FILES: readonly IncomingFile[] = [];
