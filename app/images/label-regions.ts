/** One connected set of cells. */
export type Region = { readonly cells: Int32Array };

/** Labels connected cells of one grid, again and again, without new memory for each time. */
export type RegionLabeller = {
  /**
   * Connected sets (four neighbours) of the cells brighter than a level.
   * @param within cells to look at, or null for all
   */
  above(level: number, within: Int32Array | null): Region[];
};

export function createRegionLabeller(data: Float32Array, width: number): RegionLabeller {
  const waiting = new Uint8Array(data.length);
  const found = new Int32Array(data.length);
  const all = Int32Array.from({ length: data.length }, (_, cell) => cell);

  function grow(first: number): Region {
    let [taken, looked] = [0, 0];
    const take = (cell: number): void => {
      if (waiting[cell] !== 1) return;
      waiting[cell] = 0;
      found[taken++] = cell;
    };
    take(first);
    while (looked < taken) {
      const cell = found[looked++]!;
      const x = cell % width;
      if (x > 0) take(cell - 1);
      if (x < width - 1) take(cell + 1);
      if (cell >= width) take(cell - width);
      if (cell + width < data.length) take(cell + width);
    }
    return { cells: found.slice(0, taken) };
  }

  return {
    above(level, within) {
      const listed = within ?? all;
      for (const cell of listed) if (data[cell]! > level) waiting[cell] = 1;
      const regions: Region[] = [];
      for (const cell of listed) if (waiting[cell] === 1) regions.push(grow(cell));
      return regions;
    },
  };
}
