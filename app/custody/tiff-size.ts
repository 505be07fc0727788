type Size = { readonly width: number; readonly height: number };
type Entry = { readonly type: number; readonly count: number; readonly at: number };

/** Tags of TIFF 6.0 (Adobe, 1992), section 8: size, and where the coded points lie. */
const TAG = { width: 256, height: 257, stripOffsets: 273, stripCounts: 279, tileOffsets: 324, tileCounts: 325 } as const;
/** Bytes of a value by its type, 1 to 12 (BYTE to DOUBLE, section 2). */
const BYTES: readonly (number | undefined)[] = [undefined, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8];
/** Types that a size or an offset may have: BYTE, SHORT, LONG. */
const WHOLE = [1, 3, 4];
const ENTRY = 12;
const HEADER = 8;

/** Values of an entry; they stand in the entry itself where four bytes hold them. Null where they are no whole numbers. */
function valuesOf(view: DataView, { type, count, at }: Entry, little: boolean): number[] | null {
  const bytes = BYTES[type];
  if (bytes === undefined || !WHOLE.includes(type) || count === 0) return null;
  const from = bytes * count <= 4 ? at : view.getUint32(at, little);
  return Array.from({ length: count }, (_, i) => (bytes === 1 ? view.getUint8(from + i) : bytes === 2 ? view.getUint16(from + 2 * i, little) : view.getUint32(from + 4 * i, little)));
}

/** Whether the values of an entry lie inside the file; those of a type that the standard does not know are left to its readers. */
function liesInside(view: DataView, { type, count, at }: Entry, little: boolean): boolean {
  const length = (BYTES[type] ?? 0) * count;
  return length <= 4 || view.getUint32(at, little) + length <= view.byteLength;
}

/** The entries of the first image of the file by tag; null where they or their values lie outside of it. */
function firstImage(view: DataView, little: boolean): Map<number, Entry> | null {
  const start = view.getUint32(4, little);
  if (start < HEADER || start + 2 > view.byteLength) return null;
  const count = view.getUint16(start, little);
  // The place of a further image follows the entries.
  if (start + 2 + ENTRY * count + 4 > view.byteLength) return null;
  const entries = new Map(Array.from({ length: count }, (_, i): [number, Entry] => {
    const at = start + 2 + ENTRY * i;
    return [view.getUint16(at, little), { type: view.getUint16(at + 2, little), count: view.getUint32(at + 4, little), at: at + 8 }];
  }));
  return [...entries.values()].every((entry) => liesInside(view, entry, little)) ? entries : null;
}

/** Size of a TIFF file whose first image lies inside it, every strip or tile; null where one does not. */
export function tiffSize(bytes: Uint8Array): Size | null {
  if (bytes.byteLength < HEADER) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const little = bytes[0] === 0x49;
  const entries = firstImage(view, little);
  const values = (tag: number): number[] | null => { const entry = entries?.get(tag); return entry ? valuesOf(view, entry, little) : null; };
  const [width, height] = [values(TAG.width)?.[0], values(TAG.height)?.[0]];
  const offsets = values(TAG.stripOffsets) ?? values(TAG.tileOffsets);
  const counts = values(TAG.stripCounts) ?? values(TAG.tileCounts);
  if (width === undefined || height === undefined || offsets === null || counts === null || offsets.length !== counts.length) return null;
  return offsets.every((offset, i) => counts[i]! > 0 && offset + counts[i]! <= bytes.byteLength) ? { width, height } : null;
}
