import { writeDelimited } from '../../../app/files/write-delimited.ts';
import { writeJcampDx } from '../../../app/files/write-jcamp-dx.ts';
import { infraredInstrument, simulateInfrared } from '../../../app/spectra/simulate/infrared.ts';
import { emissionInstrument } from '../../../app/spectra/simulate/instrument.ts';
import { simulatePhotoluminescence } from '../../../app/spectra/simulate/photoluminescence.ts';
import { simulatedStone, type StoneKind } from '../../../app/spectra/simulate/stone.ts';
import type { Spectrum } from '../../../app/spectra/spectrum.ts';

/** A file as a person would drop it. */
export type MadeFile = { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

const INVENTED = 'SIMULATED, invented for a test';
const asFile = (name: string, text: string): MadeFile => ({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(text, 'utf8') });
const inNames = (spectrum: Spectrum, title: string) => ({ ...spectrum, title, xUnitText: '', yUnitText: '' });

/** Light of a stone under a violet laser, with the diamond line inside the curve. */
export const violetLight = (kind: StoneKind, seed: number, points = 4000): Spectrum =>
  simulatePhotoluminescence(simulatedStone(kind, seed), emissionInstrument({ laserNm: 404.93, fromNm: 410, toNm: 850, points, spikes: 0 }), seed);

/** A JCAMP-DX file of such a curve. */
export const luminescenceFile = (kind: StoneKind, seed: number, name = `${kind}-${seed}.jdx`, points?: number): MadeFile =>
  asFile(name, writeJcampDx(inNames(violetLight(kind, seed, points), INVENTED), { dataType: 'PHOTOLUMINESCENCE SPECTRUM', origin: INVENTED, owner: INVENTED }));

/** An infrared JCAMP-DX file. */
export const infraredFile = (kind: StoneKind, seed: number): MadeFile =>
  asFile(`${kind}-infrared.jdx`, writeJcampDx(inNames(simulateInfrared(simulatedStone(kind, seed), infraredInstrument(), seed), INVENTED), { dataType: 'INFRARED SPECTRUM', origin: INVENTED, owner: INVENTED }));

/** Two bare columns in ångström that say no unit. */
export function columnsWithoutUnit(kind: StoneKind, seed: number): MadeFile {
  const { x, y } = violetLight(kind, seed);
  return asFile('angstrom-columns.txt', [...x].map((nm, i) => `${(nm * 10).toFixed(2)}\t${y[i]!.toFixed(1)}`).join('\r\n'));
}

/** A JCAMP-DX file whose points break off. */
export function brokenFile(kind: StoneKind, seed: number): MadeFile {
  const whole = luminescenceFile(kind, seed).buffer.toString('utf8').split(/\r?\n/);
  return asFile('broken-off.jdx', whole.slice(0, Math.floor(whole.length / 2)).join('\r\n'));
}

/** A CSV with a unit in its head. */
export const columnsFile = (kind: StoneKind, seed: number): MadeFile => asFile('columns.csv', writeDelimited([inNames(violetLight(kind, seed), 'curve')]));
