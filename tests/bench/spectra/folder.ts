import { spawn } from 'node:child_process';
import { linkSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { POINTS, type Luminescence } from './data.ts';

export type FolderRun = { readonly files: number; readonly seconds: number; readonly peakMb: number };

const COMMAND_LINE = fileURLToPath(new URL('../../../dist/main/culet.cjs', import.meta.url));
const REPORT_PEAK = fileURLToPath(new URL('./report-peak.mjs', import.meta.url));
/** Different files; the folder names each of them many times, which spares the disk. */
const DIFFERENT = 200;

function writeFolder(folder: string, { x, curves }: Luminescence, files: number): void {
  const store = path.join(folder, 'store');
  const many = path.join(folder, `f${files}`);
  mkdirSync(store, { recursive: true });
  mkdirSync(many);
  const different = Math.min(DIFFERENT, curves.length, files);
  for (let k = 0; k < different; k++) {
    let text = 'wavelength/nm,counts\n';
    for (let i = 0; i < POINTS; i++) text += `${x[i]!.toFixed(4)},${curves[k]![i]!.toFixed(1)}\n`;
    writeFileSync(path.join(store, `${k}.csv`), text);
  }
  for (let k = 0; k < files; k++) linkSync(path.join(store, `${k % different}.csv`), path.join(many, `${String(k).padStart(6, '0')}.csv`));
}

/** Runs the built command line over a folder of that many curves: seconds and the process' peak of resident memory. */
function runOver(folder: string, files: number, extra: readonly string[]): Promise<FolderRun> {
  const report = path.join(folder, 'peak.txt');
  const started = performance.now();
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, ['--import', REPORT_PEAK, COMMAND_LINE, 'analyse', path.join(folder, `f${files}`), '--method', 'photoluminescence', '--laser-nm', '532', '--json', ...extra],
      { stdio: ['ignore', 'pipe', 'ignore'], env: { ...process.env, PEAK_REPORT: report } });
    child.stdout.resume();
    child.once('error', reject);
    child.once('close', () => resolve({ files, seconds: (performance.now() - started) / 1000, peakMb: Number(readFileSync(report, 'utf8')) / 1024 }));
  });
}

/** A folder of a tenth of the files, half of them, and all: time must grow with the files, memory must not. */
export async function measureFolder(data: Luminescence, files: number, extra: readonly string[] = []): Promise<readonly FolderRun[]> {
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-bench-'));
  try {
    const runs: FolderRun[] = [];
    for (const count of [Math.ceil(files / 10), Math.ceil(files / 2), files]) {
      writeFolder(folder, data, count);
      runs.push(await runOver(folder, count, extra));
    }
    return runs;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
