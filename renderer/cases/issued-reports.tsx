import type { ReportRow } from '../../app/contract/report-row.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { showDay, showMoment } from '../look/time.ts';
import { listReports } from '../reports/list-reports.ts';

/** How a report of the case stands: one that was replaced or withdrawn must never look like one that counts. */
function Stands({ report: r, zone }: { readonly report: ReportRow; readonly zone: string }) {
  if (r.withdrawn) return <span className="warn">withdrawn {showDay(r.withdrawn.at, zone)} by {r.withdrawn.by}: {r.withdrawn.reason}</span>;
  if (r.state === 'superseded') return <span className="quiet">replaced by a later revision; issued {showDay(r.issuedAt, zone)}</span>;
  return <span className="quiet">issued {showMoment(r.issuedAt, zone)}{r.reason ? `: ${r.reason}` : ''}</span>;
}

/** The reports of a case, newest number first, its revisions together: what each is on and whether it counts. */
export function IssuedReports({ reports, caseNumber, onSave }: { readonly reports: readonly ReportRow[]; readonly caseNumber: string; readonly onSave: (reportId: string) => void }) {
  const { laboratory: { zone } } = useHouse();
  if (reports.length === 0) return null;
  return (
    <ul className="issued" aria-label="Reports of this case">
      {listReports(reports, '', 'all').map((r) => (
        <li key={r.id} data-state={r.state}>
          <p className="row gap8">
            <span className="grow"><span className={`mono ${r.state === 'issued' ? '' : 'quiet'}`}>{r.number}</span>{r.revision > 1 || r.state === 'superseded' ? `, revision ${r.revision}` : ''}</span>
            <Button kind="quiet" aria-label={`Save PDF of ${r.number}, revision ${r.revision}`} onPress={() => { onSave(r.id); }}>Save PDF</Button>
          </p>
          <p>on {r.subject === caseNumber ? 'the whole case' : r.subject}</p>
          <p className="issued-stands"><Stands report={r} zone={zone} /></p>
        </li>
      ))}
    </ul>
  );
}
