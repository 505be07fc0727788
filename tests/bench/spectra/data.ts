import { readFileSync } from 'node:fs';
import path from 'node:path';

/** Points of a luminescence curve and of an infrared curve, and infrared components: the layout of the files. */
export const POINTS = 3648;
export const INFRARED_POINTS = 901;
export const COMPONENTS = 5;

export type TableLine = { readonly id: number; readonly pos: number; readonly tol: number };
export type PlantedPeak = { readonly center: number; readonly fwhm: number; readonly height: number; /** Id in the table, or -1. */ readonly line: number };
export type Truth = { readonly peaks: readonly PlantedPeak[] };

/** Luminescence curves with what was planted in them. Shared memory: worker threads read the same points. */
export type Luminescence = { readonly x: Float64Array; readonly curves: readonly Float64Array[]; readonly shared: SharedArrayBuffer; readonly table: readonly TableLine[]; readonly truth: readonly Truth[] };
export type Infrared = { readonly components: readonly Float64Array[]; readonly curves: readonly Float64Array[] };

function sharedFloats(file: string): Float64Array<SharedArrayBuffer> {
  const bytes = readFileSync(file);
  const shared = new SharedArrayBuffer(bytes.byteLength);
  new Uint8Array(shared).set(bytes);
  return new Float64Array(shared);
}

/** The curves of a block of values, `skip` rows left out. */
export function rows(values: Float64Array, points: number, skip: number): Float64Array[] {
  return Array.from({ length: values.length / points - skip }, (_, k) => values.subarray((k + skip) * points, (k + skip + 1) * points));
}

/** pl.f64: x, then the curves; pl.json: `table` and `spectra[].peaks`. */
export function readLuminescence(folder: string): Luminescence {
  const values = sharedFloats(path.join(folder, 'pl.f64'));
  const { table, spectra } = JSON.parse(readFileSync(path.join(folder, 'pl.json'), 'utf8')) as { table: TableLine[]; spectra: Truth[] };
  return { x: values.subarray(0, POINTS), curves: rows(values, POINTS, 1), shared: values.buffer, table, truth: spectra };
}

/** ftir.f64: x, then five components, then the curves. */
export function readInfrared(folder: string): Infrared {
  const all = rows(sharedFloats(path.join(folder, 'ftir.f64')), INFRARED_POINTS, 1);
  return { components: all.slice(0, COMPONENTS), curves: all.slice(COMPONENTS) };
}
