import type { ReportVerdict } from '../../app/signature/report-verdict.ts';
import { inGroups } from '../../app/signature/fingerprint.ts';
import { Fact } from '../cases/fact.tsx';
import { showMoment } from '../look/time.ts';
import { sizeWords } from '../runs/incoming-file.ts';
import { answerOf } from './verdict-words.ts';

/** What checking a report gave: the answer, why, and what to do. `zone`: in which the instant of issue is shown. */
export function VerdictSheet({ name, verdict, zone }: { readonly name: string; readonly verdict: ReportVerdict; readonly zone: string }) {
  const { report, key, altered, standing } = verdict;
  const answer = answerOf(verdict);
  return (
    <section className={`verdict verdict-${answer.line}`} role="status" aria-live="polite" aria-label="Answer">
      <h2>{answer.words}</h2>
      <p>{verdict.sentence}</p>
      {altered.length > 0 ? <ul className="verdict-altered">{altered.map((one) => <li key={`${one.part} ${one.name}`}><span className="warn">{one.part}</span> <span className="second">{one.sentence}</span></li>)}</ul> : null}
      {standing ? <p className={standing.state === 'in-force' ? 'second' : 'warn'}>{standing.sentence}</p> : null}
      <p className="second">{verdict.next}</p>
      <dl className="verdict-facts">
        <Fact name="File" text={`${name}, ${sizeWords(verdict.bytes)}`} />
        {report ? <Fact name="Report" mono text={`${report.number}, revision ${report.revision}`} /> : null}
        {report ? <Fact name="Laboratory" text={report.laboratory} /> : null}
        {report ? <Fact name="Issued" mono text={showMoment(report.issuedAt, zone)} /> : null}
        {key ? <Fact name="Key" text={key.whose ?? 'of nobody who is known here'} /> : null}
        {key ? <Fact name="Fingerprint" mono text={inGroups(key.fingerprint)} /> : null}
        {report ? <Fact name="report.json" mono text={report.content} /> : null}
        <Fact name="SHA-256 of the file" mono text={verdict.sha256} />
      </dl>
    </section>
  );
}
