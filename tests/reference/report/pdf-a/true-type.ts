/** What the widths of a TrueType program say: ISO/IEC 14496-22, tables head, hhea, hmtx, maxp. */
export type TrueType = { readonly unitsPerEm: number; readonly glyphs: number; advance(glyph: number): number };

export function readTrueType(bytes: Uint8Array): TrueType {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const tables = new Map(Array.from({ length: view.getUint16(4) }, (_, i) => {
    const entry = 12 + 16 * i;
    return [Buffer.from(bytes.subarray(entry, entry + 4)).toString('latin1'), view.getUint32(entry + 8)] as const;
  }));
  const table = (name: string): number => {
    const place = tables.get(name);
    if (place === undefined) throw new Error(`the font program has no table ${name}`);
    return place;
  };
  const widths = view.getUint16(table('hhea') + 34);
  return {
    unitsPerEm: view.getUint16(table('head') + 18), glyphs: view.getUint16(table('maxp') + 4),
    advance: (glyph) => view.getUint16(table('hmtx') + 4 * Math.min(glyph, widths - 1)),
  };
}
