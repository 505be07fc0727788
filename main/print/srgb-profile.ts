/**
 * A colour profile of the sRGB space, made from its published definition so that no profile of others has to be carried:
 * primaries, white and curve from IEC 61966-2-1; layout of the file from ICC.1:2001-04 (version 2.4 of the format, which every PDF reader knows);
 * adaptation from the white of sRGB to D50 by the Bradford matrix given there in Annex E (matrix from memory, checked against the published D50 colorants of sRGB).
 */

type Vector = readonly [number, number, number];
type Matrix = readonly [Vector, Vector, Vector];

const PRIMARIES: readonly (readonly [number, number])[] = [[0.64, 0.33], [0.3, 0.6], [0.15, 0.06]];
const WHITE = [0.3127, 0.329] as const;
/** White of the profile connection space (ICC.1:2001-04, 6.1.4.1 and table 17). */
const D50: Vector = [0.9642, 1, 0.8249];
const BRADFORD: Matrix = [[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]];
/** Samples of the curve; 1024 hold it to better than one step of 8 bits. */
const CURVE_POINTS = 1024;

const NAME = 'sRGB IEC61966-2-1';
const COPYRIGHT = 'Made by Culet from the published definition of sRGB. No rights reserved.';

const xyzOf = ([x, y]: readonly [number, number]): Vector => [x / y, 1, (1 - x - y) / y];
const times = (m: Matrix, v: Vector): Vector => [dot(m[0], v), dot(m[1], v), dot(m[2], v)];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
const transpose = (m: Matrix): Matrix => [[m[0][0], m[1][0], m[2][0]], [m[0][1], m[1][1], m[2][1]], [m[0][2], m[1][2], m[2][2]]];

/** Solves m·v = b (Cramer's rule). */
function solve(m: Matrix, b: Vector): Vector {
  const [p, q, r] = transpose(m);
  const whole = dot(p, cross(q, r));
  return [dot(b, cross(q, r)) / whole, dot(p, cross(b, r)) / whole, dot(p, cross(q, b)) / whole];
}

/** XYZ of the three primaries at full drive, white normalised to Y = 1, as seen under D50. */
function colorants(): Matrix {
  const columns = PRIMARIES.map(xyzOf) as unknown as Matrix;
  const white = xyzOf(WHITE);
  const scale = solve(transpose(columns), white);
  const from = times(BRADFORD, white);
  const to = times(BRADFORD, D50);
  return columns.map((column, i) => {
    const cone = times(BRADFORD, [column[0] * scale[i]!, column[1] * scale[i]!, column[2] * scale[i]!]);
    return solve(BRADFORD, [(cone[0] * to[0]) / from[0], (cone[1] * to[1]) / from[1], (cone[2] * to[2]) / from[2]]);
  }) as unknown as Matrix;
}

const linear = (encoded: number): number => (encoded <= 0.04045 ? encoded / 12.92 : ((encoded + 0.055) / 1.055) ** 2.4);

function tagged(type: string, body: Buffer): Buffer {
  const head = Buffer.alloc(8);
  head.write(type, 0, 'latin1');
  return Buffer.concat([head, body]);
}

/** s15Fixed16Number. */
function fixed(values: Vector): Buffer {
  const out = Buffer.alloc(12);
  values.forEach((value, i) => out.writeInt32BE(Math.round(value * 65_536), i * 4));
  return out;
}

function curve(): Buffer {
  const out = Buffer.alloc(4 + CURVE_POINTS * 2);
  out.writeUInt32BE(CURVE_POINTS, 0);
  for (let i = 0; i < CURVE_POINTS; i += 1) out.writeUInt16BE(Math.round(linear(i / (CURVE_POINTS - 1)) * 65_535), 4 + i * 2);
  return tagged('curv', out);
}

/** textDescriptionType: the ASCII part; the Unicode and script parts stay empty. */
function description(text: string): Buffer {
  const out = Buffer.alloc(4 + text.length + 1 + 4 + 4 + 2 + 1 + 67);
  out.writeUInt32BE(text.length + 1, 0);
  out.write(text, 4, 'latin1');
  return tagged('desc', out);
}

const align4 = (length: number): number => (length + 3) & ~3;

function header(size: number): Buffer {
  const out = Buffer.alloc(128);
  out.writeUInt32BE(size, 0);
  out.writeUInt32BE(0x02400000, 8);
  out.write('mntrRGB XYZ ', 12, 'latin1');
  // Year, month, day of the profile: the same in every file, as the content is.
  [2026, 1, 1].forEach((part, i) => out.writeUInt16BE(part, 24 + i * 2));
  out.write('acsp', 36, 'latin1');
  fixed(D50).copy(out, 68);
  return out;
}

let made: Buffer | null = null;

/** The profile's bytes; always the same. */
export function srgbProfile(): Buffer {
  if (made !== null) return made;
  const [red, green, blue] = colorants();
  const shared = curve();
  const tags: readonly (readonly [string, Buffer])[] = [
    ['desc', description(NAME)], ['cprt', tagged('text', Buffer.from(`${COPYRIGHT}\0`, 'latin1'))], ['wtpt', tagged('XYZ ', fixed(D50))],
    ['rXYZ', tagged('XYZ ', fixed(red))], ['gXYZ', tagged('XYZ ', fixed(green))], ['bXYZ', tagged('XYZ ', fixed(blue))],
    ['rTRC', shared], ['gTRC', shared], ['bTRC', shared],
  ];
  const bodies: Buffer[] = [];
  const places = new Map<Buffer, number>();
  let at = 128 + 4 + tags.length * 12;
  for (const [, body] of tags) {
    if (places.has(body)) continue;
    places.set(body, at);
    bodies.push(body, Buffer.alloc(align4(body.length) - body.length));
    at += align4(body.length);
  }
  const table = Buffer.alloc(4 + tags.length * 12);
  table.writeUInt32BE(tags.length, 0);
  tags.forEach(([name, body], i) => {
    table.write(name, 4 + i * 12, 'latin1');
    table.writeUInt32BE(places.get(body)!, 8 + i * 12);
    table.writeUInt32BE(body.length, 12 + i * 12);
  });
  made = Buffer.concat([header(at), table, ...bodies]);
  return made;
}

export const PROFILE_NAME = NAME;
