/** A curve to be written. */
export type MadeCurve = { readonly x?: readonly number[]; readonly y: readonly number[]; readonly z?: number };
export type MadeSpc = {
  readonly curves: readonly MadeCurve[];
  readonly firstX?: number; readonly lastX?: number;
  /** Listed abscissae for all curves. */
  readonly listed?: readonly number[];
  readonly xType?: number; readonly yType?: number; readonly experiment?: number; readonly memo?: string; readonly labels?: readonly string[];
  /** 'float', or the power of two of whole numbers. */
  readonly exponent?: 'float' | number; readonly short?: boolean; readonly bigEndian?: boolean; readonly log?: string; readonly directory?: boolean;
  readonly subExponents?: readonly number[];
};

const SUB = 32;
const latin = (target: Uint8Array, at: number, text: string): void => { [...text].forEach((c, i) => { target[at + i] = c.charCodeAt(0); }); };

function putY(view: DataView, at: number, y: readonly number[], exponent: number, short: boolean, little: boolean): void {
  y.forEach((value, i) => {
    if (exponent === -128) view.setFloat32(at + 4 * i, value, little);
    else if (short) view.setInt16(at + 2 * i, Math.round(value / 2 ** (exponent - 16)), little);
    else view.setInt32(at + 4 * i, Math.round(value / 2 ** (exponent - 32)), little);
  });
}

/** Writes the new form of the format after its published layout, independently of the reader. */
export function madeSpc(made: MadeSpc): Uint8Array {
  const { curves, listed, xType = 3, yType = 4, experiment = 0, memo = '', labels = [], short = false, bigEndian = false, log, directory = false } = made;
  const little = !bigEndian;
  const exponent = made.exponent === undefined || made.exponent === 'float' ? -128 : made.exponent;
  const ownX = curves.some((curve) => curve.x !== undefined);
  const width = exponent !== -128 && short ? 2 : 4;
  const n = curves[0]!.y.length;
  const sizes = curves.map((curve) => SUB + (curve.x ? 4 * curve.x.length : 0) + width * curve.y.length);
  const dataBytes = 512 + (listed ? 4 * listed.length : 0) + sizes.reduce((a, b) => a + b, 0);
  const directoryBytes = directory ? 12 * curves.length : 0;
  const logBytes = log === undefined ? 0 : 64 + log.length;
  const bytes = new Uint8Array(dataBytes + directoryBytes + logBytes);
  const view = new DataView(bytes.buffer);
  const flags = (short ? 1 : 0) | (curves.length > 1 ? 4 : 0) | (labels.length > 0 ? 32 : 0) | (ownX ? 64 : 0) | (ownX || listed ? 128 : 0);
  bytes[0] = flags;
  bytes[1] = bigEndian ? 0x4c : 0x4b;
  bytes[2] = experiment;
  view.setInt8(3, exponent);
  view.setUint32(4, directory ? dataBytes : n, little);
  view.setFloat64(8, made.firstX ?? listed?.[0] ?? 0, little);
  view.setFloat64(16, made.lastX ?? listed?.at(-1) ?? 0, little);
  view.setUint32(24, curves.length, little);
  bytes[28] = xType;
  bytes[29] = yType;
  view.setUint32(32, (2026 << 20) | (3 << 16) | (14 << 11) | (9 << 6) | 26, little);
  latin(bytes, 88, memo);
  latin(bytes, 218, labels.join('\0'));
  if (log !== undefined) view.setUint32(248, dataBytes + directoryBytes, little);
  let at = 512;
  listed?.forEach((x, i) => { view.setFloat32(at + 4 * i, x, little); });
  at += listed ? 4 * listed.length : 0;
  curves.forEach((curve, k) => {
    const own = made.subExponents?.[k] ?? (curves.length > 1 ? exponent : 0);
    if (directory) { view.setUint32(dataBytes + 12 * k, at, little); view.setUint32(dataBytes + 12 * k + 4, sizes[k]!, little); }
    view.setInt8(at + 1, own);
    view.setUint16(at + 2, k, little);
    view.setFloat32(at + 4, curve.z ?? 0, little);
    view.setUint32(at + 16, ownX ? curve.y.length : 0, little);
    at += SUB;
    curve.x?.forEach((x, i) => { view.setFloat32(at + 4 * i, x, little); });
    at += curve.x ? 4 * curve.x.length : 0;
    putY(view, at, curve.y, made.subExponents ? own : exponent, short, little);
    at += width * curve.y.length;
  });
  if (log !== undefined) {
    at = dataBytes + directoryBytes;
    view.setUint32(at, logBytes, little);
    view.setUint32(at + 8, 64, little);
    latin(bytes, at + 64, log);
  }
  return bytes;
}

/** Writes the old form: a header of 256 bytes that ends with the first subheader; 32-bit numbers with their halves exchanged. */
export function madeOldSpc({ curves, firstX = 0, lastX = 1, xType = 1, yType = 2, exponent = 4, short = false, memo = '' }: Omit<MadeSpc, 'exponent'> & { readonly exponent?: number }): Uint8Array {
  const n = curves[0]!.y.length;
  const width = short ? 2 : 4;
  const bytes = new Uint8Array(224 + curves.length * (SUB + width * n));
  const view = new DataView(bytes.buffer);
  bytes[0] = (short ? 1 : 0) | (curves.length > 1 ? 4 : 0);
  bytes[1] = 0x4d;
  view.setInt16(2, exponent, true);
  view.setFloat32(4, n, true);
  view.setFloat32(8, firstX, true);
  view.setFloat32(12, lastX, true);
  bytes[16] = xType;
  bytes[17] = yType;
  view.setUint16(18, 1991, true);
  bytes[20] = 7;
  bytes[21] = 2;
  latin(bytes, 64, memo);
  let at = 224;
  for (const curve of curves) {
    at += SUB;
    curve.y.forEach((value, i) => {
      if (short) { view.setInt16(at + 2 * i, Math.round(value / 2 ** (exponent - 16)), true); return; }
      const whole = Math.round(value / 2 ** (exponent - 32));
      view.setInt16(at + 4 * i, whole >> 16, true);
      view.setUint16(at + 4 * i + 2, whole & 0xffff, true);
    });
    at += width * n;
  }
  return bytes;
}
