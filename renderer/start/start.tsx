import { useState } from 'react';
import type { Output } from '../../app/contract/index.ts';
import { Button } from '../look/button.tsx';
import { Trouble } from '../look/empty.tsx';
import { Mark } from '../look/mark.tsx';
import { useNotes } from '../look/notes.tsx';
import { HERE } from '../house/zones.ts';
import { useChange } from '../queries.ts';
import { CheckReport } from '../reports/check-report.tsx';
import { NewCasebook } from './new-casebook.tsx';
import { Unusable } from './unusable.tsx';
import { useProgress } from './use-progress.ts';
import './start.css';

function Building() {
  const progress = useProgress('casebook.openDemonstration');
  return (
    <div className="start-building" role="status">
      <progress aria-label="Building the demonstration" max={progress?.total ?? 1} value={progress?.done} />
      <p className="quiet">{progress ? `${progress.note}, ${progress.done} of ${progress.total}` : 'Building the demonstration, some seconds'}</p>
    </div>
  );
}

/** A report of some laboratory, checked before there is any casebook: no key is known here. */
function CheckHere({ onBack }: { readonly onBack: () => void }) {
  return (
    <section className="start-form">
      <h2>Check a report</h2>
      <CheckReport zone={HERE} />
      <div className="row"><Button kind="quiet" onPress={onBack}>Back</Button></div>
    </section>
  );
}

/** The first screen: start one's own casebook, look at the demonstration, check a report, or be told why the file can't be opened. */
export function Start({ status }: { readonly status: Output<'casebook.status'> }) {
  const [way, setWay] = useState<'own' | 'check' | null>(null);
  const demonstration = useChange('casebook.openDemonstration');
  const notes = useNotes();
  if (status.state === 'unusable' && status.trouble) return <Unusable trouble={status.trouble} file={status.file} />;
  return (
    <main className={`start ${way === null ? '' : 'start-at-work'}`}>
      <header className="start-head">
        <p className="start-brand"><Mark size={26} />Culet</p>
        {way === null ? <p className="second">Keeps a gem laboratory’s diamond cases: custody, raw readings, the evidence for each stone, and the screening report.</p> : null}
        {status.hostNote ? <p className="quiet">{status.hostNote}</p> : null}
      </header>
      {way === 'own' ? <NewCasebook onBack={() => { setWay(null); }} /> : null}
      {way === 'check' ? <CheckHere onBack={() => { setWay(null); }} /> : null}
      {way !== null ? null : (<>
        <div className="start-choices">
          <section>
            <h2>Start my own casebook</h2>
            <p className="second">For your laboratory. One file holds everything; it stays on this machine.</p>
            <p className="quiet mono start-file">{status.file}</p>
            <Button kind="main" autoFocus onPress={() => { setWay('own'); }}>Start my own</Button>
          </section>
          <section>
            <h2>Open the demonstration casebook</h2>
            <p className="second">Seven invented cases with stones of every kind, to look round in and to try things on. Its data are made up and marked as such; it is a file of its own.</p>
            {demonstration.isPending
              ? <Building />
              : <Button onPress={() => { demonstration.mutate({}, { onError: (e) => { notes.complain(e.failure); } }); }}>Open the demonstration</Button>}
            {demonstration.error ? <Trouble {...demonstration.error.failure} /> : null}
          </section>
        </div>
        <section className="start-check">
          <p className="second grow">Has somebody handed you a report? Whether it is as its laboratory issued it can be told without a casebook.</p>
          <Button onPress={() => { setWay('check'); }}>Check a report</Button>
        </section>
      </>)}
      <footer className="quiet start-foot">Version {status.version}. A screening result can hurt its owner if it is wrong: let qualified persons use this program, and follow the instruments’ instructions and local rules for lasers, ultraviolet and cryogens.</footer>
    </main>
  );
}
