import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
import { readInfrared, readLuminescence } from './data.ts';
import { measureFolder } from './folder.ts';
import { makeData } from './make-data.ts';
import { measureFalseAlarms, measureInfrared, measureOneThread, measurePoints, measureThreads } from './measure.ts';
import { peerCoefficients, peerData, peerScore, pythonWithScipy, runPeer, type Peer } from './peer.ts';
import { scoreReadings } from './score.ts';

const SIZES = [1_000, 4_000, 16_000, 64_000];

const FALSE_ALARM_CURVES = 1000;

const say = (line = ''): void => console.log(line);
const perSecond = (ms: number): string => `${ms.toFixed(3)} ms a curve, ${(1000 / ms).toFixed(0)} curves a second`;
const times = (ratio: number): string => `${ratio.toFixed(2)} times`;

function options(): { readonly peer: string | null; readonly spectra: number; readonly files: number } {
  const { values } = parseArgs({ options: { peer: { type: 'string' }, spectra: { type: 'string', default: '2000' }, files: { type: 'string', default: '10000' } } });
  const whole = (name: 'spectra' | 'files', least: number): number => {
    const value = Number(values[name]);
    if (!Number.isInteger(value) || value < least) throw new Error(`--${name} takes a whole number from ${least}.`);
    return value;
  };
  return { peer: values.peer ?? null, spectra: whole('spectra', 50), files: whole('files', 0) };
}

function usablePeer(script: string | null, folder: string): Peer | null {
  if (script === null) return null;
  const python = pythonWithScipy();
  if (python === null) { say('No Python with SciPy is installed here: the peer is left out.'); return null; }
  return { python, script: path.resolve(process.env['INIT_CWD'] ?? process.cwd(), script), folder };
}

function reportInfrared(folder: string, peer: Peer | null, peerMs: number | null): void {
  const { msPerCurve, coefficients } = measureInfrared(readInfrared(folder));
  say(`Infrared decomposition, five components: ${(1000 * msPerCurve).toFixed(2)} µs a curve`);
  if (peer === null || peerMs === null) return;
  const theirs = peerCoefficients(peer);
  const worst = coefficients.reduce((most, value, k) => Math.max(most, Math.abs(value - theirs[k]!)), 0);
  say(`  scipy.optimize.nnls: ${(1000 * peerMs).toFixed(2)} µs a curve; here ${times(peerMs / msPerCurve)} as fast; greatest difference of a coefficient ${worst.toExponential(1)}`);
}

async function run(folder: string): Promise<void> {
  const { peer: script, spectra, files } = options();
  say(`${cpus()[0]?.model ?? 'unknown processor'}, ${availableParallelism()} threads, load ${loadavg()[0]!.toFixed(1)}, Node ${process.versions.node}`);
  const peer = usablePeer(script, folder);
  if (peer === null) makeData(folder, spectra);
  else peerData(peer, spectra);
  const data = readLuminescence(folder);

  const one = measureOneThread(data);
  const score = scoreReadings(one.readings, data);
  say(`\n${data.curves.length} curves of ${data.x.length} points: spikes, smoothing, noise, baseline, peaks, a fit of every line, names`);
  say(`  one thread:   ${perSecond(one.msPerCurve)}`);
  say(`  found ${score.found} of ${score.isolated} strong lines that stand alone, named ${score.named} of ${score.lines}, precision ${score.precision.toFixed(4)}, median error of a centre ${score.centreMedianNm.toFixed(4)} nm`);

  let infraredPeerMs: number | null = null;
  if (peer !== null) {
    const theirs = runPeer(peer, spectra);
    const after = measureOneThread(data);
    infraredPeerMs = theirs.infraredMs;
    const ours = peerScore(peer, one.readings);
    say(`  the peer:     ${perSecond(theirs.msPerCurve)} (${theirs.versions})`);
    say(`  here ${times(theirs.msPerCurve / one.msPerCurve)} as fast before the peer ran, ${times(theirs.msPerCurve / after.msPerCurve)} after`);
    say('  by the peer’s own measure          here     peer');
    for (const key of Object.keys(ours) as (keyof typeof ours)[]) say(`    ${key.padEnd(24)} ${String(ours[key]).padStart(10)} ${String(theirs.score[key]).padStart(8)}`);
  }
  const alarms = measureFalseAlarms(FALSE_ALARM_CURVES);
  say(`  false alarms: ${alarms.lines} lines in ${alarms.curves} curves of noise alone`);
  const two = await measureThreads(data, 2);
  say(`  two workers:  ${perSecond(two)}; ${times(one.msPerCurve / two)} one thread`);
  say();
  reportInfrared(folder, peer, infraredPeerMs);

  say('\nCost against points');
  for (const { points, ms } of measurePoints(SIZES)) say(`  ${String(points).padStart(6)} points  ${ms.toFixed(3).padStart(8)} ms  ${((1000 * ms) / points).toFixed(3)} µs a point`);

  if (files > 0) {
    say('\nA folder of curves as text, by the command line (reading, analysing, JSON)');
    for (const { files: count, seconds, peakMb } of await measureFolder(data, files)) {
      say(`  ${String(count).padStart(6)} files  ${seconds.toFixed(1).padStart(6)} s  ${((1000 * seconds) / count).toFixed(2)} ms a file  peak of memory ${peakMb.toFixed(0)} MB`);
    }
  }
}

const folder = mkdtempSync(path.join(tmpdir(), 'culet-bench-'));
try {
  await run(folder);
} catch (fault) {
  console.error(fault instanceof Error ? fault.message : String(fault));
  process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
