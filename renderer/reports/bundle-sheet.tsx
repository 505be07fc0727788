import type { BundleVerdict } from '../../app/bundle/bundle-verdict.ts';
import { inGroups } from '../../app/signature/fingerprint.ts';
import { Fact } from '../cases/fact.tsx';
import { showMoment } from '../look/time.ts';
import { sizeWords } from '../runs/incoming-file.ts';

/** The answer in a few words, and how the line beside it is drawn, as for a report. */
const WORDS: Readonly<Record<BundleVerdict['verdict'], { readonly words: string; readonly line: 'sound' | 'open' | 'wrong' }>> = {
  authentic: { words: 'Authentic', line: 'sound' }, altered: { words: 'Altered', line: 'wrong' }, 'unknown-key': { words: 'Unaltered, key unknown', line: 'open' },
  unsigned: { words: 'Whole, but signed by nobody', line: 'open' }, 'not-a-bundle': { words: 'Not a bundle', line: 'open' },
};

/** Faults that are shown; more say nothing new. */
const SHOWN = 12;
/** Cases that are named one by one. */
const NAMED = 8;

const casesText = (cases: readonly string[]): string =>
  (cases.length <= NAMED ? cases.join(', ') : `${cases.slice(0, NAMED).join(', ')} and ${cases.length - NAMED} more`);

/** What checking a bundle gave: the answer, which file and what, and what to do. `zone`: in which the instant is shown. */
export function BundleSheet({ name, verdict, zone }: { readonly name: string; readonly verdict: BundleVerdict; readonly zone: string }) {
  const { bundle, key, faults } = verdict;
  const { words, line } = WORDS[verdict.verdict];
  return (
    <section className={`verdict verdict-${line}`} role="status" aria-live="polite" aria-label="Answer">
      <h2>{words}</h2>
      <p>{verdict.sentence}</p>
      {faults.length > 0 ? (
        <ul className="verdict-altered">
          {faults.slice(0, SHOWN).map((one) => <li key={`${one.code} ${one.path} ${one.sentence}`} className="verdict-fault">{one.path ? <span className="warn mono">{one.path}</span> : null} <span className="second">{one.sentence}</span></li>)}
          {faults.length > SHOWN ? <li className="second">and {faults.length - SHOWN} more</li> : null}
        </ul>
      ) : null}
      <p className="second">{verdict.next}</p>
      <dl className="verdict-facts">
        <Fact name="File" text={`${name}, ${sizeWords(verdict.bytes)}`} />
        {bundle ? <Fact name="Laboratory" text={bundle.laboratory} /> : null}
        {bundle?.period ? <Fact name="Received" mono text={`${bundle.period.from} to ${bundle.period.to}`} /> : null}
        {bundle ? <Fact name="Cases" mono text={casesText(bundle.cases)} /> : null}
        {bundle ? <Fact name="Holds" text={`reports: ${bundle.reports}; raw records: ${bundle.rawRecords}; files in all: ${bundle.files}`} /> : null}
        {bundle ? <Fact name="Recomputed" text={`custody entries: ${bundle.ledgers.custody}; audit entries: ${bundle.ledgers.audit}; digests walked: ${bundle.ledgers.walked}; checkpoints: ${bundle.ledgers.checkpoints}`} /> : null}
        {bundle ? <Fact name="Written" mono text={showMoment(bundle.exportedAt, zone)} /> : null}
        {key ? <Fact name="Key" text={key.whose ?? 'of nobody who is known here'} /> : null}
        {key ? <Fact name="Fingerprint" mono text={inGroups(key.fingerprint)} /> : null}
        <Fact name="SHA-256 of the file" mono text={verdict.sha256} />
      </dl>
    </section>
  );
}
