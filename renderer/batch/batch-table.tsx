import { METHODS } from '../../app/domain/method.ts';
import type { BatchRow } from '../../app/batch/batch-row.ts';
import type { AnalysableMethod } from '../../app/spectra/analysis.ts';
import { DataTable, type Column } from '../look/data-table.tsx';
import { centreName } from '../spectrum/peaks-table.tsx';

const findingsOf = (row: BatchRow): string => row.findings.map((finding) => finding.statement).join('; ');
const warningsOf = (row: BatchRow): string => (row.error ? row.error.message : row.warnings.join(' '));
const diamondOf = (row: BatchRow): string => (row.diamond === null ? '' : row.diamondNm === null ? row.diamond : `${row.diamond}, ${row.diamondNm.toFixed(2)} nm`);

const FILE: Column<BatchRow> = { key: 'file', head: 'File', width: 'minmax(180px, 1.4fr)', sort: (row) => row.file, cell: (row) => <span className="one-line" title={row.file}>{row.file}{row.block !== null && row.block > 0 ? <span className="quiet"> · {row.title || row.block + 1}</span> : null}</span> };
const DIAMOND: Column<BatchRow> = { key: 'diamond', head: 'Diamond line', width: '150px', sort: diamondOf, cell: (row) => <span className="one-line">{diamondOf(row)}</span> };
const CENTRES: Column<BatchRow> = { key: 'centres', head: 'Centres', width: 'minmax(140px, 1fr)', sort: (row) => row.centres.length, cell: (row) => { const names = row.centres.map(centreName).join(', '); return <span className="one-line" title={names}>{names}</span>; } };
const TYPE: Column<BatchRow> = { key: 'type', head: 'Type', width: '110px', sort: (row) => row.infraredType ?? '', cell: (row) => row.infraredType ?? '' };
const COLOUR: Column<BatchRow> = { key: 'colour', head: 'Looks', width: '100px', sort: (row) => row.colour ?? '', cell: (row) => row.colour ?? '' };
const FINDINGS: Column<BatchRow> = { key: 'findings', head: 'Findings', width: 'minmax(220px, 2fr)', sort: (row) => row.findings.length, cell: (row) => <span className="one-line" title={findingsOf(row)}>{findingsOf(row)}</span> };
const WARNINGS: Column<BatchRow> = { key: 'warnings', head: 'Warnings', width: 'minmax(160px, 1.2fr)', sort: (row) => (row.error ? -1 : row.warnings.length), cell: (row) => <span className={`one-line ${row.error ? 'warn' : 'second'}`} title={warningsOf(row)}>{row.error ? `not analysed: ${row.error.message}` : warningsOf(row)}</span> };

function columnsFor(method: AnalysableMethod): readonly Column<BatchRow>[] {
  switch (method) {
    case 'photoluminescence': return [FILE, DIAMOND, CENTRES, COLOUR, FINDINGS, WARNINGS];
    case 'raman': return [FILE, DIAMOND, CENTRES, FINDINGS, WARNINGS];
    case 'infrared': return [FILE, TYPE, FINDINGS, WARNINGS];
    case 'absorption': return [FILE, CENTRES, FINDINGS, WARNINGS];
    case 'ultraviolet-transmission': return [FILE, FINDINGS, WARNINGS];
  }
}

/** The curves of a batch, one in a row. */
export function BatchTable({ rows, method }: { readonly rows: readonly BatchRow[]; readonly method: AnalysableMethod }) {
  return <DataTable label={`Files analysed as ${METHODS[method].name}`} rows={rows} columns={columnsFor(method)} rowKey={(row) => `${row.file}#${row.block ?? 'file'}`} />;
}
