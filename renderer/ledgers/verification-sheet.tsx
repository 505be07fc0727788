import type { Verification } from '../../app/contract/casebook.ts';
import { useHouse } from '../house/house-context.tsx';
import { showMoment } from '../look/time.ts';
import './ledgers.css';

/** What was found in a part, as a sentence where another follows it. */
const found = ({ sound, fault, note }: Verification['parts'][number]): string => (sound ? (note === undefined ? 'as recorded' : 'as recorded.') : fault ?? 'does not fit');

/** What the check recomputed and what it found, part by part. */
export function VerificationSheet({ result }: { readonly result: Verification }) {
  const { laboratory } = useHouse();
  return (
    <section className="verification" role="status" aria-live="polite">
      <h2 className={result.sound ? '' : 'warn'}>{result.sound ? 'Unbroken' : 'Something does not fit'}</h2>
      <p className="second">Recomputed {showMoment(result.at, laboratory.zone)}.</p>
      <ul className="rows">
        {result.parts.map((p) => (
          <li key={p.part} className="verification-part">
            <span>{p.part}</span>
            <span className="mono to-right">{p.checked.toLocaleString('en')}</span>
            <span className={p.sound ? 'second' : 'warn'}>{found(p)}{p.note === undefined ? '' : ` ${p.note}`}</span>
            <span className="mono quiet one-line to-right" title={p.head ?? undefined}>{p.head ? `head ${p.head.slice(0, 16)}` : ''}</span>
          </li>
        ))}
      </ul>
      {result.sound ? null : <p>Do not rely on what is named, and issue no report on it. Keep this file as it is: it shows what was done. Compare with the checked copies in the backups folder (the House page names the casebook beside it), find out who had the file, and go on from a copy that verifies.</p>}
      <p className="quiet">A changed, missing or foreign entry is found, and so is an end that was cut off. What can’t be shown from the file alone: that it was replaced by an older one, or that somebody who holds it wrote all of it anew, or cut off the end together with the records and the count of it. Note the heads outside this machine from time to time and compare.</p>
    </section>
  );
}
