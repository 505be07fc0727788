import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Reading } from './pipeline.ts';

/** A script that makes the data, runs SciPy over them and scores anyone's results: `gen`, `run`, `refs` and `score`, each with --out FOLDER. */
export type Peer = { readonly python: string; readonly script: string; readonly folder: string };

export type PeerRun = {
  readonly versions: string;
  readonly msPerCurve: number;
  readonly stages: Readonly<Record<string, number>>;
  readonly score: PeerScore;
  readonly infraredMs: number;
};
/** The peer's own measure; names are the script's. */
export type PeerScore = {
  readonly precision: number; readonly isolated_strong: number; readonly found: number; readonly line_truth: number; readonly line_matched: number;
  readonly fit_center_median_nm: number; readonly fit_center_p90_nm: number; readonly fits: number;
};

const PYTHONS = ['python3', '/usr/bin/python3', 'python'];

/** A Python that has SciPy, or null. */
export const pythonWithScipy = (): string | null => PYTHONS.find((python) => spawnSync(python, ['-c', 'import scipy.optimize, scipy.signal']).status === 0) ?? null;

function call({ python, script, folder }: Peer, args: readonly string[]): string {
  const { status, stdout, stderr } = spawnSync(python, [script, ...args, '--out', folder], { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (status !== 0) throw new Error(`${path.basename(script)} ${args[0]} ended with code ${status}: ${stderr}`);
  return stdout;
}

export const peerData = (peer: Peer, count: number): void => { call(peer, ['gen', '--n', String(count)]); };

/** Runs SciPy on one thread over the data. */
export function runPeer(peer: Peer, count: number): PeerRun {
  call(peer, ['run', '--n', String(count), '--als', 'banded']);
  const report = JSON.parse(readFileSync(path.join(peer.folder, 'baseline.json'), 'utf8')) as {
    python: string; numpy: string; scipy: string; ftir_1proc: { ms: number };
    pl_1proc_banded: Record<string, number> & { total_ms: number; score: PeerScore };
  };
  const { total_ms: msPerCurve, score, ...stages } = report.pl_1proc_banded;
  return { versions: `Python ${report.python}, NumPy ${report.numpy}, SciPy ${report.scipy}`, msPerCurve, stages, score, infraredMs: report.ftir_1proc.ms };
}

/** The peer's measure of our readings. */
export function peerScore(peer: Peer, readings: readonly Reading[]): PeerScore {
  const file = path.join(peer.folder, 'readings.json');
  writeFileSync(file, JSON.stringify(readings.map(({ centers, match, fit }) => ({ centers, match, fit }))));
  return JSON.parse(call(peer, ['score', file])) as PeerScore;
}

/** Coefficients of scipy.optimize.nnls, five to a curve. */
export function peerCoefficients(peer: Peer): Float64Array {
  call(peer, ['refs']);
  const bytes = readFileSync(path.join(peer.folder, 'nnls_ref.f64'));
  return new Float64Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
}
