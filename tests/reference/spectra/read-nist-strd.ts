import { readFileSync } from 'node:fs';

export type NistSet = { readonly x: Float64Array; readonly y: Float64Array; readonly starts: readonly [number[], number[]]; readonly certified: number[]; readonly deviations: number[]; readonly rss: number };

/** Reads a data file of the NIST Statistical Reference Datasets for nonlinear regression (public domain). */
export function readNistStrd(name: string): NistSet {
  const text = readFileSync(new URL(`../../fixtures/nist-strd/${name}.dat`, import.meta.url), 'utf8');
  const parameters = [...text.matchAll(/^\s*b\d+ =\s+(\S+)\s+(\S+)\s+(\S+)\s+(\S+)\s*$/gm)].map((row) => row.slice(1, 5).map(Number));
  const rss = Number(/Residual Sum of Squares:\s+(\S+)/.exec(text)![1]);
  const data = text.slice(text.lastIndexOf('Data:')).split(/\r?\n/).slice(1).map((line) => line.trim().split(/\s+/).map(Number)).filter((row) => row.length === 2);
  return {
    x: Float64Array.from(data, (row) => row[1]!), y: Float64Array.from(data, (row) => row[0]!),
    starts: [parameters.map((p) => p[0]!), parameters.map((p) => p[1]!)], certified: parameters.map((p) => p[2]!), deviations: parameters.map((p) => p[3]!), rss,
  };
}
