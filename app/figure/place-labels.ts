/** A label that wants to stand at a line: the line's x, the width of the text, what it is worth. All px. */
export type LabelRequest = { readonly x: number; readonly width: number; readonly importance: number };

/** Where labels may stand. Row 0 is the lowest, just above the frame. */
export type LabelSpace = {
  readonly left: number;
  readonly right: number;
  readonly rows: number;
  /** Between two labels of a row. */
  readonly gap: number;
  /** Between a line and its own label. */
  readonly offset: number;
  /** Between a line on its way up and a label it passes. */
  readonly clearance: number;
  /** Room already taken, by row. */
  readonly blocked: readonly { readonly row: number; readonly left: number; readonly right: number }[];
};

export type PlacedLabel = { readonly index: number; readonly row: number; readonly left: number; readonly right: number };
export type LabelPlacement = { readonly placed: readonly PlacedLabel[]; readonly dropped: readonly number[]; readonly rowsUsed: number };

type Side = 'right' | 'left';
const BOTH: readonly Side[] = ['right', 'left'];

/** More labels than anyone reads: the search stays short, what is worth less goes without. */
const MOST_LABELS = 40;

/** Does the vertical stroke at x, which ends in `row`, or its label, hit a label that stands already? */
function fits(candidate: PlacedLabel, x: number, placed: readonly PlacedLabel[], requests: readonly LabelRequest[], space: LabelSpace): boolean {
  const { gap, clearance } = space;
  const strokeHits = (stroke: number, left: number, right: number): boolean => stroke > left - clearance && stroke < right + clearance;
  const textHits = (left: number, right: number): boolean => candidate.left < right + gap && left < candidate.right + gap;
  if (candidate.left < space.left || candidate.right > space.right) return false;
  for (const b of space.blocked) {
    if (b.row === candidate.row && textHits(b.left, b.right)) return false;
    if (b.row <= candidate.row && strokeHits(x, b.left, b.right)) return false;
  }
  for (const other of placed) {
    if (other.row === candidate.row && textHits(other.left, other.right)) return false;
    if (other.row <= candidate.row && strokeHits(x, other.left, other.right)) return false;
    if (other.row >= candidate.row && strokeHits(requests[other.index]!.x, candidate.left, candidate.right)) return false;
  }
  return true;
}

function candidateAt(index: number, row: number, side: Side, requests: readonly LabelRequest[], space: LabelSpace): PlacedLabel {
  const { x, width } = requests[index]!;
  const left = side === 'right' ? x + space.offset : x - space.offset - width;
  return { index, row, left, right: left + width };
}

/** The lowest free row on the first of these sides that has one. */
function lowestFit(index: number, sides: readonly Side[], placed: readonly PlacedLabel[], requests: readonly LabelRequest[], space: LabelSpace): PlacedLabel | null {
  for (const side of sides) {
    for (let row = 0; row < space.rows; row++) {
      const candidate = candidateAt(index, row, side, requests, space);
      if (fits(candidate, requests[index]!.x, placed, requests, space)) return candidate;
    }
  }
  return null;
}

/** Lets each label sink, the highest first, until none finds a lower row on either side. */
function settle(placed: readonly PlacedLabel[], requests: readonly LabelRequest[], space: LabelSpace): PlacedLabel[] {
  let now = [...placed];
  for (let moved = true; moved; ) {
    moved = false;
    for (const label of [...now].sort((a, b) => b.row - a.row || a.index - b.index)) {
      const others = now.filter((other) => other.index !== label.index);
      const lower = BOTH.map((side) => lowestFit(label.index, [side], others, requests, space)).filter((fit) => fit !== null).sort((a, b) => a.row - b.row)[0];
      if (lower === undefined || lower.row >= label.row) continue;
      now = [...others, lower];
      moved = true;
    }
  }
  return now;
}

/** Runs of lines, by index in rising x, that stand so near that a label may reach over the next line. */
function crowdsOf(chosen: readonly number[], requests: readonly LabelRequest[], space: LabelSpace): number[][] {
  const crowds: number[][] = [];
  let last: number | null = null;
  for (const index of [...chosen].sort((a, b) => requests[a]!.x - requests[b]!.x || a - b)) {
    const near = last !== null && requests[index]!.x - requests[last]!.x < Math.max(requests[index]!.width, requests[last]!.width) + space.gap + space.offset;
    if (near) crowds.at(-1)!.push(index);
    else crowds.push([index]);
    last = index;
  }
  return crowds;
}

/**
 * Places each crowd as two stairs: the first `splits[c]` lines fly their labels to the left, outermost lowest, the others to the
 * right; so no line has to pass a label. Who finds no room on its side comes last and may take the other: it has to stand above
 * the lines it reaches over.
 */
function placeStairs(crowds: readonly (readonly number[])[], splits: readonly number[], requests: readonly LabelRequest[], space: LabelSpace): PlacedLabel[] {
  const placed: PlacedLabel[] = [];
  const put = (sides: readonly Side[]) => (index: number): boolean => {
    const fit = lowestFit(index, sides, placed, requests, space);
    if (fit !== null) placed.push(fit);
    return fit === null;
  };
  const late = crowds.flatMap((crowd, c) => [
    ...crowd.slice(0, splits[c]).filter(put(['left'])).reverse(),
    ...crowd.slice(splits[c]).reverse().filter(put(['right'])).reverse(),
  ]);
  late.forEach(put(BOTH));
  return settle(placed, requests, space);
}

/** Fewest lost, then fewest rows, then low; to the right rather than to the left. */
function costOf(placed: readonly PlacedLabel[], wanted: number, requests: readonly LabelRequest[]): number {
  const rows = placed.reduce((most, p) => Math.max(most, p.row + 1), 0);
  const leftward = placed.filter((p) => p.left < requests[p.index]!.x).length;
  return (wanted - placed.length) * 1e6 + rows * 1e3 + placed.reduce((sum, p) => sum + p.row, 0) + leftward * 1e-2;
}

/** The best stairs: one crowd after the other gets the split that serves the whole best. */
function bestStairs(chosen: readonly number[], requests: readonly LabelRequest[], space: LabelSpace): PlacedLabel[] {
  const crowds = crowdsOf(chosen, requests, space);
  const splits = crowds.map((crowd) => crowd.length >> 1);
  let best = placeStairs(crowds, splits, requests, space);
  let bestCost = costOf(best, chosen.length, requests);
  crowds.forEach((crowd, c) => {
    let bestSplit = splits[c]!;
    for (let split = 0; split <= crowd.length; split++) {
      splits[c] = split;
      const placed = placeStairs(crowds, splits, requests, space);
      const cost = costOf(placed, chosen.length, requests);
      if (cost < bestCost) [best, bestCost, bestSplit] = [placed, cost, split];
    }
    splits[c] = bestSplit;
  });
  return best;
}

/**
 * Puts labels into rows above a frame so that no label touches another and no line crosses a label. Each label stands to the
 * right or the left of its own line. What finds no room is dropped, the least important first, and listed by index.
 */
export function placeLabels(requests: readonly LabelRequest[], space: LabelSpace): LabelPlacement {
  const byWorth = requests.map((_, i) => i).sort((a, b) => requests[b]!.importance - requests[a]!.importance || a - b);
  // One that finds no room even alone must not cost the others theirs.
  let chosen = byWorth.filter((index) => lowestFit(index, BOTH, [], requests, space) !== null).slice(0, MOST_LABELS);
  let placed = bestStairs(chosen, requests, space);
  while (placed.length < chosen.length) {
    chosen = chosen.slice(0, -1);
    placed = bestStairs(chosen, requests, space);
  }
  // What made room for others may still find a gap.
  for (const index of byWorth.filter((i) => !chosen.includes(i))) {
    const fit = lowestFit(index, BOTH, placed, requests, space);
    if (fit !== null) placed.push(fit);
  }
  const standing = new Set(placed.map((p) => p.index));
  return {
    placed: [...placed].sort((a, b) => a.index - b.index),
    dropped: requests.map((_, i) => i).filter((i) => !standing.has(i)),
    rowsUsed: placed.reduce((most, p) => Math.max(most, p.row + 1), 0),
  };
}
