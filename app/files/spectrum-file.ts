import type { Result } from '../result.ts';
import type { Spectrum, XUnit, YUnit } from '../spectra/spectrum.ts';

export type FileFormat = 'jcamp-dx' | 'delimited-text' | 'spc';

/** Something the user must see and the run keeps, which does not stop the reading. */
export type ReadWarning = { readonly code: string; readonly message: string; readonly line?: number };

/** Why nothing was read. The message names line and reason and says what to do. */
export type ReadError = { readonly code: string; readonly message: string; readonly line?: number };

/** One curve of a file, points in the file's order. */
export type SpectrumBlock = Spectrum & {
  readonly title: string;
  /** The units in the file's own words, where it has any. */
  readonly xUnitText: string;
  readonly yUnitText: string;
  /** Header entries worth keeping (label, value), in the file's order. */
  readonly header: readonly (readonly [string, string])[];
  /** Set where the points are a list of peaks (in any order, one or more) and no curve. */
  readonly peaksOnly?: boolean;
};

export type SpectrumFile = {
  readonly format: FileFormat;
  /** Reader's name and version, stored beside what it read. */
  readonly reader: string;
  readonly blocks: readonly SpectrumBlock[];
  readonly warnings: readonly ReadWarning[];
};

export type ReadOptions = {
  /** Stated by the user or remembered by the instrument, used only where the file does not say. */
  readonly xUnit?: XUnit;
  readonly yUnit?: YUnit;
};

/** Reads the bytes of an instrument's file. `name` is used in sentences only. Implemented in read-spectrum-file.ts. */
export type ReadSpectrumFile = (name: string, bytes: Uint8Array, options?: ReadOptions) => Result<SpectrumFile, ReadError>;
