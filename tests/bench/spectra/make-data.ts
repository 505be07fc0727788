import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { gaussian, lorentzian } from '../../../app/spectra/simulate/line-shapes.ts';
import { seededRandom, type SeededRandom } from '../../../app/spectra/simulate/seeded-random.ts';
import { COMPONENTS, INFRARED_POINTS, POINTS, type PlantedPeak, type TableLine, type Truth } from './data.ts';

/** Sixty lines spread over the axis, each with its own tolerance. */
function makeTable(r: SeededRandom): TableLine[] {
  return Array.from({ length: 60 }, (_, id) => ({ id, pos: 312 + (676 * id) / 59 + r.between(-4, 4), tol: r.between(0.4, 1.5) }));
}

/** 4 to 14 lines of 0.9 to 9 nm and 150 to 20,000 counts, three in five of them lines of the table. */
function plant(r: SeededRandom, table: readonly TableLine[]): (PlantedPeak & { readonly lorentz: boolean })[] {
  return Array.from({ length: 4 + r.below(11) }, () => {
    const line = r.uniform() < 0.6 ? r.below(60) : -1;
    const center = line >= 0 ? table[line]!.pos + 0.08 * r.normal() : r.between(310, 990);
    return { center, fwhm: r.logBetween(0.9, 9), height: r.logBetween(150, 20_000), line, lorentz: r.uniform() < 0.5 };
  });
}

function makeCurve(r: SeededRandom, x: Float64Array, table: readonly TableLine[], out: Float64Array): Truth {
  const peaks = plant(r, table);
  const [level, hump, at, width, slope, readNoise] = [r.between(300, 500), r.between(200, 3000), r.between(0.3, 0.7), r.between(0.2, 0.5), r.between(0, 800), r.between(4, 12)];
  for (let i = 0; i < x.length; i++) {
    const u = (x[i]! - 300) / 700;
    let light = level + hump * Math.exp(-(((u - at) / width) ** 2)) + slope * u;
    for (const peak of peaks) light += peak.height * (peak.lorentz ? lorentzian : gaussian)(x[i]!, peak.center, peak.fwhm);
    // Counts this many follow a normal law as well as Poisson's.
    out[i] = Math.round(light + Math.sqrt(light) * r.normal()) + readNoise * r.normal();
  }
  return { peaks };
}

function makeInfrared(r: SeededRandom, count: number): Float64Array {
  const values = new Float64Array((1 + COMPONENTS + count) * INFRARED_POINTS);
  const row = (k: number): Float64Array => values.subarray(k * INFRARED_POINTS, (k + 1) * INFRARED_POINTS);
  row(0).forEach((_, i, x) => { x[i] = 1400 - i / 2; });
  for (let c = 0; c < COMPONENTS - 1; c++) {
    for (let b = 0; b < 5; b++) {
      const [at, width, height] = [r.between(960, 1390), r.between(8, 60), r.between(0.2, 1)];
      row(1 + c).forEach((value, i, shape) => { shape[i] = value + height * gaussian(row(0)[i]!, at, width); });
    }
  }
  row(COMPONENTS).fill(1);
  for (let k = 0; k < count; k++) {
    const weights = Array.from({ length: COMPONENTS }, (_, c) => (c === COMPONENTS - 1 ? r.between(0, 0.3) : r.uniform() < 0.75 ? -Math.log(1 - r.uniform()) : 0));
    row(1 + COMPONENTS + k).forEach((_, i, y) => { y[i] = weights.reduce((sum, w, c) => sum + w * row(1 + c)[i]!, 0) + 0.01 * r.normal(); });
  }
  return values;
}

/** Writes made curves with their truth into a folder, in the layout of `data.ts`. The same count gives the same bytes. */
export function makeData(folder: string, count: number): void {
  mkdirSync(folder, { recursive: true });
  const r = seededRandom(20_260_101);
  const values = new Float64Array((1 + count) * POINTS);
  const x = values.subarray(0, POINTS);
  // A grating's axis: not quite even.
  x.forEach((_, i) => { const t = i / (POINTS - 1); x[i] = 300 + 700 * (t + 0.06 * t * (1 - t)); });
  const table = makeTable(r);
  const spectra = Array.from({ length: count }, (_, k) => makeCurve(r, x, table, values.subarray((1 + k) * POINTS, (2 + k) * POINTS)));
  writeFileSync(path.join(folder, 'pl.f64'), values);
  writeFileSync(path.join(folder, 'pl.json'), JSON.stringify({ table, spectra }));
  writeFileSync(path.join(folder, 'ftir.f64'), makeInfrared(r, count));
}
