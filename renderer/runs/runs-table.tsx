import { Fragment } from 'react';
import type { RunView } from '../../app/contract/work.ts';
import { INSTRUMENT_STATE_WORDS } from '../../app/domain/instrument-state.ts';
import { shortDigest, showClock, showMoment, showShortDay } from '../look/time.ts';
import { shortMethod } from './method-words.ts';
import { resolutionUnit } from '../../app/domain/resolution-unit.ts';
import { RunFiles } from './run-files.tsx';

/** "Photoluminescence, 404.93 nm" */
export function methodWords(run: Pick<RunView, 'method' | 'laserNm' | 'temperatureK'>): string {
  return [shortMethod(run.method), run.laserNm === null ? '' : `${run.laserNm} nm`].filter(Boolean).join(', ');
}

function rawWords(run: RunView): string {
  const [first, ...more] = run.files;
  if (!first) return 'typed';
  return `${shortDigest(first.sha256)}${more.length > 0 ? ` +${more.length}` : ''}`;
}

/** With what a run was made, in one line. */
function RunFacts({ run }: { readonly run: RunView }) {
  const facts = [
    run.instrument === null ? '' : `${run.instrument}, ${INSTRUMENT_STATE_WORDS[run.instrumentState]}`, run.temperatureK === null ? '' : `${run.temperatureK} K`,
    run.integrationMs === null ? '' : `${run.integrationMs} ms`, run.resolution === null ? '' : `resolution ${run.resolution} ${resolutionUnit(run.method)}`,
  ].filter(Boolean);
  return facts.length > 0 ? <p className="quiet run-remark">{facts.join(' · ')}</p> : null;
}

/** Newest first: which run, by whom, from which raw record, and what it brought. The chosen one opens its files. */
export function RunsTable({ runs, chosen, zone, onChoose }: { readonly runs: readonly RunView[]; readonly chosen: string | null; readonly zone: string; readonly onChoose: (id: string) => void }) {
  const rows = runs.toSorted((a, b) => b.at.localeCompare(a.at) || b.number.localeCompare(a.number, 'en', { numeric: true }));
  return (
    <section className="runs" aria-label="Runs">
      <table className="plain-table">
        <thead><tr><th>Run</th><th>Method</th><th>Recorded</th><th>By</th><th>Raw record</th><th>Reads</th></tr></thead>
        <tbody>
          {rows.map((run) => (
            <Fragment key={run.id}>
              <tr tabIndex={0} aria-selected={run.id === chosen} className={`opens ${run.id === chosen ? 'chosen' : ''}`} onClick={() => { onChoose(run.id); }}
                onKeyDown={(e) => {
                  if (e.key === 'Enter' || e.key === ' ') { e.preventDefault(); onChoose(run.id); }
                  const next = e.key === 'ArrowDown' ? 1 : e.key === 'ArrowUp' ? -1 : 0;
                  if (next === 0) return;
                  e.preventDefault();
                  const all = [...e.currentTarget.parentElement?.querySelectorAll<HTMLElement>('tr.opens') ?? []];
                  all[all.indexOf(e.currentTarget) + next]?.focus();
                }}>
                <td className="mono">{run.number}</td>
                <td><span className="one-line" title={run.instrument ?? undefined}>{methodWords(run)}</span>{run.instrumentState === 'in-order' || run.instrumentState === 'no-instrument' ? null : <span className="warn"> · {INSTRUMENT_STATE_WORDS[run.instrumentState]}</span>}</td>
                <td className="mono" title={showMoment(run.at, zone)}>{showShortDay(run.at, zone)} {showClock(run.at, zone)}</td>
                <td title={run.by}>{run.byInitials}</td>
                <td className="mono" title={run.files.map((f) => `${f.name} ${f.sha256}`).join('\n')}>{rawWords(run)}</td>
                <td className={`one-line ${run.files.some((f) => f.outcome === 'refused') ? 'warn' : ''}`} title={run.reads}>{run.reads}</td>
              </tr>
              {run.id === chosen && (run.files.length > 0 || run.note !== '' || run.instrument !== null || (run.warnings?.length ?? 0) > 0) ? (
                <tr className="run-more"><td /><td colSpan={5}>
                  {run.warnings?.map((warning) => <p key={warning.code} className="warn run-remark">{warning.message}</p>)}
                  <RunFacts run={run} />
                  {run.note ? <p className="second run-remark">{run.note}</p> : null}
                  <RunFiles run={run} />
                </td></tr>
              ) : null}
            </Fragment>
          ))}
        </tbody>
      </table>
    </section>
  );
}
