import { useState } from 'react';
import type { FindingView, StoneFolder } from '../../app/contract/work.ts';
import { useKey } from '../keys/keymap.ts';
import { useNotes } from '../look/notes.tsx';
import { useChange } from '../queries.ts';
import { FindingNote } from './finding-note.tsx';
import { speaksAgainst, splitFindings } from './finding-weight.ts';
import { WithNumbers } from './with-numbers.tsx';

function foldedWords(folded: readonly FindingView[]): string {
  const aside = folded.filter((f) => f.state === 'set-aside').length;
  return [aside > 0 ? `${aside} set aside` : '', folded.length > aside ? `${folded.length - aside} replaced` : ''].filter(Boolean).join(', ');
}

/** Findings in the margin. J and K move, A accepts, X sets aside with a reason. */
export function FindingsMargin({ folder, active, mayDecide, onRun, onAdd }: {
  readonly folder: StoneFolder; readonly active: boolean; readonly mayDecide: boolean; readonly onRun: (runId: string) => void; readonly onAdd: () => void;
}) {
  const { standing, folded } = splitFindings(folder.findings);
  const [wanted, setWanted] = useState<string | null>(null);
  const [asking, setAsking] = useState<string | null>(null);
  const [unfolded, setUnfolded] = useState(false);
  const decide = useChange('findings.decide');
  const notes = useNotes();
  const at = standing.findIndex((f) => f.id === wanted);
  const current = standing[at];
  const open = standing.filter((f) => f.state === 'proposed').length;

  const move = (by: number) => {
    const next = standing[at < 0 ? (by > 0 ? 0 : standing.length - 1) : Math.min(standing.length - 1, Math.max(0, at + by))];
    if (!next) return;
    setWanted(next.id);
    setAsking(null);
    if (next.runId !== null) onRun(next.runId);
  };
  const accept = (finding: FindingView) => {
    if (!mayDecide || finding.state === 'accepted') return;
    decide.mutate({ findingId: finding.id, accept: true, reason: '' }, { onError: (e) => { notes.complain(e.failure); } });
    // On to the next that waits.
    const index = standing.findIndex((f) => f.id === finding.id);
    const next = [...standing.slice(index + 1), ...standing.slice(0, index)].find((f) => f.state === 'proposed');
    setWanted(next?.id ?? finding.id);
  };
  const setAside = (finding: FindingView, reason: string) => {
    decide.mutate({ findingId: finding.id, accept: false, reason }, {
      onSuccess: () => {
        setAsking(null);
        notes.say('Set aside, with its reason.', () => { decide.mutate({ findingId: finding.id, accept: true, reason: '' }); });
      },
      onError: (e) => { notes.complain(e.failure); },
    });
  };
  useKey('J', () => { move(1); }, active);
  useKey('K', () => { move(-1); }, active);
  useKey('A', () => { if (current) accept(current); else move(1); }, active);
  useKey('X', () => { if (current && mayDecide) setAsking(current.id); else move(1); }, active);

  return (
    <section aria-label="What the tests say">
      <div className="margin-head"><span className="label">What the tests say</span>{open > 0 ? <span className="quiet">{open} to decide</span> : null}</div>
      {standing.length === 0 ? <p className="second margin-empty">{folder.runs.length === 0 ? 'Nothing yet. Findings appear here once a test is recorded.' : 'The runs brought no finding, or all were set aside.'}</p> : null}
      <ul className="margin-notes">
        {standing.map((finding) => (
          <FindingNote key={finding.id} finding={finding} current={finding.id === wanted} against={speaksAgainst(finding.supports, folder.proposal.conclusion)} asking={asking === finding.id} mayDecide={mayDecide}
            onCurrent={() => { if (wanted !== finding.id) { setWanted(finding.id); if (finding.runId !== null) onRun(finding.runId); } }}
            onAccept={() => { accept(finding); }} onAsk={() => { setWanted(finding.id); setAsking(finding.id); }} onSetAside={(reason) => { setAside(finding, reason); }} onLeaveAsking={() => { setAsking(null); }} />
        ))}
      </ul>
      <div className="margin-acts">
        <button type="button" className="word-button" disabled={!mayDecide} onClick={onAdd}>Add an own observation <kbd className="keys" aria-hidden="true">O</kbd></button>
        {folded.length > 0 ? <button type="button" className="word-button" aria-expanded={unfolded} onClick={() => { setUnfolded(!unfolded); }}>{foldedWords(folded)}</button> : null}
      </div>
      {unfolded ? (
        <ul className="margin-folded">
          {folded.map((finding) => (
            <li key={finding.id}>
              <p className="second"><WithNumbers text={finding.statement} /></p>
              <p className="note-from">{[finding.run ?? '', finding.state === 'replaced' ? 'replaced by a newer analysis' : `set aside${finding.decidedBy ? ` by ${finding.decidedBy}` : ''}: ${finding.reason}`].filter(Boolean).join(' · ')}</p>
              {finding.state === 'set-aside' ? <button type="button" className="word-button" disabled={!mayDecide} onClick={() => { decide.mutate({ findingId: finding.id, accept: true, reason: '' }, { onError: (e) => { notes.complain(e.failure); } }); }}>Accept after all</button> : null}
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}
