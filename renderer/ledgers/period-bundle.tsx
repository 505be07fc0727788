import { useEffect, useRef, useState } from 'react';
import { addDays, dayInZone } from '../../app/custody/calendar.ts';
import type { Output } from '../../app/contract/index.ts';
import { Fact } from '../cases/fact.tsx';
import { door } from '../door.ts';
import { useHouse } from '../house/house-context.tsx';
import { useKey } from '../keys/keymap.ts';
import { Button } from '../look/button.tsx';
import { Dialog } from '../look/dialog.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useChange } from '../queries.ts';
import { sizeWords } from '../runs/incoming-file.ts';
import { useProgress } from '../start/use-progress.ts';
import '../reports/reports.css';

let sheets = 0;

/** The month before today: what an auditor asks for most, as a first suggestion. */
function monthBefore(today: string): { from: string; to: string } {
  const to = addDays(`${today.slice(0, 8)}01`, -1);
  return { from: `${to.slice(0, 8)}01`, to };
}

/** Asks for two days and writes the cases received between them as one zip beside the casebook. */
export function PeriodBundle({ onClose }: { readonly onClose: () => void }) {
  const { laboratory } = useHouse();
  const [days, setDays] = useState(() => monthBefore(dayInZone(new Date().toISOString(), laboratory.zone)));
  const [task] = useState(() => `bundle ${++sheets} ${Math.random().toString(36).slice(2)}`);
  const write = useChange('bundles.writePeriod');
  const progress = useProgress(task);
  const stop = () => { void door.call('work.cancel', { task }); };
  const running = useRef(false);
  useEffect(() => { running.current = write.isPending; }, [write.isPending]);
  // Closing the sheet stops the work: nothing goes on unseen.
  useEffect(() => () => { if (running.current) void door.call('work.cancel', { task }); }, [task]);
  const send = () => { if (!write.isPending) write.mutate({ task, ...days }); };
  useKey('Mod+Enter', send);
  const fields = write.error?.failure.fields ?? {};
  return (
    <Dialog title="Bundle of a period" width={600} onClose={onClose}
      footer={write.isPending
        ? <Button kind="main" autoFocus onPress={stop}>Stop</Button>
        : <><Button key={write.status} autoFocus={write.isSuccess || write.isError} onPress={onClose}>{write.data ? 'Done' : 'Not now'}</Button><Button kind={write.data ? 'plain' : 'main'} keys="Mod+Enter" onPress={send}>{write.data ? 'Write again' : 'Write the bundle'}</Button></>}>
      <p>Every case received on these days, both counted in: its records, issued reports, raw files and the entries of both ledgers, as one zip that anyone can check without Culet.</p>
      <div className="period-days">
        <Field label="Received from" type="date" autoFocus value={days.from} error={fields['from']} disabled={write.isPending} onChange={(from) => { setDays({ ...days, from }); }} />
        <Field label="to" type="date" value={days.to} error={fields['to']} disabled={write.isPending} onChange={(to) => { setDays({ ...days, to }); }} />
      </div>
      <p className="quiet">Days in {laboratory.zone}. The zip holds clients’ names and values: hand it only to whom it concerns.</p>
      {write.isPending ? (
        <div className="period-progress" role="status">
          <progress max={Math.max(1, progress?.total ?? 1)} value={progress?.done ?? 0} aria-label="Cases written" />
          <span className="second">{progress ? `${progress.done} of ${progress.total}: ${progress.note}` : 'Looking for the cases'}</span>
        </div>
      ) : null}
      {write.error ? <Trouble {...write.error.failure} /> : null}
      {write.data && !write.isPending ? <Written {...write.data} /> : null}
    </Dialog>
  );
}

function Written({ file, bytes, sha256, cases, files, unsignedBecause }: Output<'bundles.writePeriod'>) {
  return (
    <section role="status" aria-label="Written">
      <dl className="verdict-facts">
        <Fact name="Written to" text={file} />
        <Fact name="Holds" text={`cases: ${cases}; files: ${files}; ${sizeWords(bytes)}`} />
        <Fact name="SHA-256" mono text={sha256} />
        <Fact name="Signed" text={unsignedBecause === '' ? 'with the laboratory’s key' : 'by nobody'} />
      </dl>
      {unsignedBecause === '' ? null : <p className="warn">{unsignedBecause} The bundle says so itself. Let somebody who may sign be signed in with a password, and write it again.</p>}
    </section>
  );
}
