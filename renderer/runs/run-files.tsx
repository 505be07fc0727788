import type { RunView } from '../../app/contract/work.ts';
import { useNotes } from '../look/notes.tsx';
import { shortDigest } from '../look/time.ts';
import { sizeWords } from './incoming-file.ts';
import { withLine } from './with-line.ts';
import { saveRawRecord } from './save-raw-record.ts';

/** The raw records of a run with what reading them said; each can be had back as it came. */
export function RunFiles({ run }: { readonly run: RunView }) {
  const notes = useNotes();
  if (run.files.length === 0) return null;
  return (
    <ul className="run-files">
      {run.files.map((file) => (
        <li key={file.rawRecordId}>
          <div className="trial-head">
            <span className="trial-name" title={file.name}>{file.name}</span>
            <span className="mono quiet" title={`SHA-256 ${file.sha256}`}>{shortDigest(file.sha256)}</span>
            <span className="quiet">{sizeWords(file.size)}{file.reader ? `, ${file.reader}` : ''}</span>
            <button type="button" className="word-button" onClick={() => { void saveRawRecord(file.rawRecordId).then((failure) => { if (failure) notes.complain(failure); }); }}>Save a copy</button>
          </div>
          {file.error ? <p className="warn run-remark">Not read. {withLine(file.error)} The file is kept byte for byte.</p> : null}
          {file.warnings.map((warning) => <p key={`${warning.code}${warning.message}`} className="warn run-remark">{withLine(warning)}</p>)}
        </li>
      ))}
    </ul>
  );
}
