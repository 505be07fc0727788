/** Name and version of the reader, stored beside everything it reads. Raise it when the same bytes would read differently. */
export const READER = 'culet-files 1.1';

/** What a spectrum of a bench instrument stays far below; above it the file is something else. */
export const FILE_LIMITS = {
  maxBytes: 128 * 1024 * 1024,
  maxPoints: 8_000_000,
  maxColumns: 1024,
  /** Header entries kept with a block, and characters of one entry; the raw file keeps the rest. */
  headerEntries: 200,
  headerChars: 400,
} as const;

/** How far a file may disagree with its own check values before it is refused. Common practice, no source. */
export const CHECK_TOLERANCES = {
  /** Share of NPOINTS by which the count may differ; one point is always allowed (a check ordinate counted). */
  countShare: 0.01,
  /** A line's X may be off by this share of the point distance, plus the rounding of the X as written. */
  xStepShare: 0.5,
  /** Rounding of a written number: one unit of its last digit (rounded or cut off), with a little slack. */
  lastDigits: 1.05,
  /** FIRSTY, MAXY, MINY: units of YFACTOR, because writers round before or after scaling. */
  yQuanta: 1.5,
  relative: 1e-5,
  /** DIF tables with more than this share of failed Y checks are not trusted. */
  failedYChecks: 0.5,
} as const;

/** A transmittance or reflectance above this is taken to be in per cent: as a fraction it would be impossible. */
export const PERCENT_ABOVE = 5;
