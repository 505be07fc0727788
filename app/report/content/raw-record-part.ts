import type { RawRecordsPart } from '../sections/raw-records.ts';
import { photographsOf, type ReportSource } from './report-source.ts';

/** "842 B", "31.4 KB", "2.1 MB"; 1 KB = 1000 B. */
export function sizeText(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  return bytes < 1_000_000 ? `${(bytes / 1000).toFixed(1)} KB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** Each file of each run, then the photographs, with the full digest of its bytes. */
export function rawRecordParts(source: ReportSource): RawRecordsPart['records'] {
  const { attached } = source;
  const travels = (sha256: string): { attached?: boolean } => (attached === undefined ? {} : { attached: attached.has(sha256) });
  const ofRuns = source.stones.flatMap((entry) => entry.runs)
    .sort((a, b) => Number(a.number.slice(1)) - Number(b.number.slice(1)))
    .flatMap((run) => run.files.map((file) => ({ run: run.number, name: file.name, size: sizeText(file.size), sha256: file.sha256, ...travels(file.sha256) })));
  return [...ofRuns, ...photographsOf(source).map((photograph) => ({ run: 'photo', name: photograph.name, size: sizeText(photograph.size), sha256: photograph.sha256, ...travels(photograph.sha256) }))];
}
