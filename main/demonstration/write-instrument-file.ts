import { writeJcampDx } from '../../app/files/write-jcamp-dx.ts';
import type { Spectrum } from '../../app/spectra/spectrum.ts';
import type { Setup } from './scenario-schema.ts';

export type InstrumentFile = { readonly name: string; readonly bytes: Uint8Array };
export type FileFacts = { readonly stem: string; readonly title: string; readonly instrument: string; readonly marking: string };

const DATA_TYPES: Readonly<Record<Setup['method'], string>> = {
  photoluminescence: 'PHOTOLUMINESCENCE SPECTRUM', raman: 'RAMAN SPECTRUM', infrared: 'INFRARED SPECTRUM', absorption: 'UV/VIS SPECTRUM', 'ultraviolet-transmission': 'UV/VIS SPECTRUM',
};
const X_WORDS: Partial<Record<Spectrum['xUnit'], string>> = { nm: 'Wavelength [nm]', 'cm-1': 'Wavenumber [1/cm]', 'raman-shift': 'Raman shift [1/cm]' };
const Y_WORDS: Partial<Record<Spectrum['yUnit'], string>> = { counts: 'Counts', absorbance: 'Absorbance', transmittance: 'Transmittance' };
const ANGSTROM_PER_NM = 10;
/** Where the damaged file breaks off, as a share of its lines. */
const BREAK_AT = 0.6;

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const comma = (value: number): string => String(value).replace('.', ',');

function jcamp(curve: Spectrum, method: Setup['method'], facts: FileFacts): string {
  return writeJcampDx(
    { ...curve, title: facts.title, xUnitText: '', yUnitText: '' },
    { dataType: DATA_TYPES[method], origin: `SIMULATED, ${facts.marking}`, owner: facts.marking, records: [['$SIMULATED', facts.marking], ['SPECTROMETER/DATA SYSTEM', facts.instrument]] },
  );
}

/** The first part of a file, as a broken transfer leaves it: cut in the middle of a number's line, without its end. */
function brokenOff(text: string): string {
  const lines = text.split('\r\n');
  return lines.slice(0, Math.floor(lines.length * BREAK_AT)).join('\r\n').slice(0, -4);
}

function columns(curve: Spectrum, facts: FileFacts, separator: string, number: (value: number) => string): string {
  const names = [X_WORDS[curve.xUnit] ?? 'x', Y_WORDS[curve.yUnit] ?? 'y'];
  const head = [`Title${separator}${facts.title}`, `Instrument${separator}${facts.instrument}`, `Remark${separator}SIMULATED, ${facts.marking}`, '', names.join(separator)];
  return [...head, ...Array.from(curve.x, (x, index) => `${number(x)}${separator}${number(curve.y[index]!)}`), ''].join('\r\n');
}

/** Wavelengths in ångström and intensities, without a word about either. */
function bareAngstrom(curve: Spectrum, facts: FileFacts): string {
  return [`# SIMULATED, ${facts.marking}`, ...Array.from(curve.x, (x, index) => `${(x * ANGSTROM_PER_NM).toFixed(3)} ${curve.y[index]!}`), ''].join('\n');
}

/** A curve as the bytes of an instrument's file, marked as simulated inside. */
export function writeInstrumentFile(curve: Spectrum, setup: Pick<Setup, 'method' | 'format'>, facts: FileFacts): InstrumentFile {
  const { stem } = facts;
  switch (setup.format) {
    case 'jcamp': return { name: `${stem}.jdx`, bytes: encode(jcamp(curve, setup.method, facts)) };
    case 'damaged': return { name: `${stem}.jdx`, bytes: encode(brokenOff(jcamp(curve, setup.method, facts))) };
    case 'tabs-decimal-comma': return { name: `${stem}.txt`, bytes: encode(columns(curve, facts, '\t', comma)) };
    case 'semicolons': return { name: `${stem}.csv`, bytes: encode(columns(curve, facts, ';', String)) };
    case 'angstrom-bare': return { name: `${stem}.dat`, bytes: encode(bareAngstrom(curve, facts)) };
  }
}
