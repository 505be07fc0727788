import { useEffect, useRef, useState } from 'react';
import type { FindingView } from '../../app/contract/work.ts';
import { findingWords } from '../../app/report/finding-words.ts';
import { Button } from '../look/button.tsx';
import { Field } from '../look/field.tsx';
import { findingToken } from './finding-weight.ts';
import { WithNumbers } from './with-numbers.tsx';

type Props = {
  readonly finding: FindingView;
  readonly current: boolean;
  readonly against: boolean;
  /** The reason for setting it aside is being written. */
  readonly asking: boolean;
  readonly mayDecide: boolean;
  readonly onCurrent: () => void;
  readonly onAccept: () => void;
  readonly onAsk: () => void;
  readonly onSetAside: (reason: string) => void;
  readonly onLeaveAsking: () => void;
};

function Reason({ onKeep, onLeave }: { readonly onKeep: (reason: string) => void; readonly onLeave: () => void }) {
  const [reason, setReason] = useState('');
  const [open, setOpen] = useState(false);
  const keep = () => { if (reason.trim() === '') setOpen(true); else onKeep(reason); };
  return (
    <form className="note-reason" onSubmit={(e) => { e.preventDefault(); keep(); }} onKeyDown={(e) => { if (e.key === 'Escape') { e.stopPropagation(); onLeave(); } }}>
      <Field label="Why is it set aside?" value={reason} onChange={setReason} autoFocus error={open && reason.trim() === '' ? 'Write why; the reason is kept and printed.' : undefined} placeholder="lamp light, another stone in the beam …" />
      <div className="row gap8"><Button type="submit">Set aside</Button><Button kind="quiet" keys="Escape" onPress={onLeave}>Leave it</Button></div>
    </form>
  );
}

/** One fact in the margin: what was found, from which run, what it can and can't say, and what the examiner decided. */
export function FindingNote(p: Props) {
  const { finding, current } = p;
  const place = useRef<HTMLLIElement>(null);
  useEffect(() => { if (current) place.current?.scrollIntoView({ block: 'nearest' }); }, [current]);
  const strong = finding.strength === 'strong' || finding.strength === 'diagnostic';
  const dashed = p.against || !finding.counts;
  const says = [finding.run ?? (finding.origin === 'examiner' ? 'own observation' : ''), findingWords(finding.strength, finding.supports), finding.caution ?? ''].filter(Boolean);
  return (
    <li ref={place} className={`margin-note ${current ? 'margin-note-current' : ''}`} data-state={finding.state} onClick={p.onCurrent} onFocus={p.onCurrent}
      style={{ borderLeftColor: `var(--${findingToken(finding.supports)})`, borderLeftWidth: strong ? 4 : 2, borderLeftStyle: dashed ? 'dashed' : 'solid', paddingLeft: strong ? 10 : 12 }}>
      <p className="note-says" title={finding.source}><WithNumbers text={finding.statement} /></p>
      <p className="note-from"><WithNumbers text={says.join(' · ')} />{finding.state === 'accepted' ? <span title={`accepted by ${finding.decidedBy ?? 'the examiner'}`}> · accepted</span> : <span className="note-open"> · to decide</span>}</p>
      {finding.remark ? <p className="note-from warn">{finding.remark}</p> : null}
      {finding.counts ? null : <p className="note-from warn">Does not count: the instrument of its run was not in order or is not named.</p>}
      {p.asking ? <Reason onKeep={p.onSetAside} onLeave={p.onLeaveAsking} /> : (
        <div className="note-acts">
          {finding.state === 'proposed' ? <button type="button" className="word-button" disabled={!p.mayDecide} onClick={p.onAccept}>Accept <kbd className="keys" aria-hidden="true">A</kbd></button> : null}
          <button type="button" className="word-button" disabled={!p.mayDecide} onClick={p.onAsk}>Set aside <kbd className="keys" aria-hidden="true">X</kbd></button>
        </div>
      )}
    </li>
  );
}
