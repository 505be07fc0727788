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
const SIDES: readonly (readonly Side[])[] = [['right', 'left'], ['left', 'right']];

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

function lowestFit(index: number, sides: readonly Side[], placed: readonly PlacedLabel[], requests: readonly LabelRequest[], space: LabelSpace): PlacedLabel | null {
  const { x, width } = requests[index]!;
  for (let row = 0; row < space.rows; row++) {
    for (const side of sides) {
      const left = side === 'right' ? x + space.offset : x - space.offset - width;
      const candidate = { index, row, left, right: left + width };
      if (fits(candidate, x, placed, requests, space)) return candidate;
    }
  }
  return null;
}

/** Orders in which placing one after the other tends to succeed: from either end, from the ends inwards, the important first. */
function orders(chosen: readonly number[], requests: readonly LabelRequest[]): number[][] {
  const rising = [...chosen].sort((a, b) => requests[a]!.x - requests[b]!.x || a - b);
  const inwards: number[] = [];
  for (let low = 0, high = rising.length - 1; low <= high; low++, high--) {
    inwards.push(rising[low]!);
    if (high > low) inwards.push(rising[high]!);
  }
  return [rising, [...rising].reverse(), inwards, [...chosen].sort((a, b) => requests[b]!.importance - requests[a]!.importance || a - b)];
}

/** Inner labels to the inner side: the left half of a crowd flies to the left, the right half to the right. */
function outwardSides(chosen: readonly number[], requests: readonly LabelRequest[]): (index: number) => readonly Side[] {
  const middle = chosen.map((i) => requests[i]!.x).sort((a, b) => a - b)[chosen.length >> 1] ?? 0;
  return (index) => (requests[index]!.x < middle ? SIDES[1]! : SIDES[0]!);
}

/** The best of several greedy placements of all chosen labels: fewest lost, then lowest. */
function bestAttempt(chosen: readonly number[], requests: readonly LabelRequest[], space: LabelSpace): PlacedLabel[] {
  const sideRules = [() => SIDES[0]!, () => SIDES[1]!, outwardSides(chosen, requests)];
  let best: PlacedLabel[] = [];
  let bestCost = Number.POSITIVE_INFINITY;
  for (const order of orders(chosen, requests)) {
    for (const sides of sideRules) {
      const placed: PlacedLabel[] = [];
      for (const index of order) {
        const fit = lowestFit(index, sides(index), placed, requests, space);
        if (fit !== null) placed.push(fit);
      }
      const height = placed.reduce((most, p) => Math.max(most, p.row + 1), 0);
      const cost = (chosen.length - placed.length) * 1e6 + height * 1e3 + placed.reduce((sum, p) => sum + p.row, 0);
      if (cost < bestCost) [best, bestCost] = [placed, cost];
    }
  }
  return best;
}

/**
 * Puts labels into rows above a frame so that no label touches another and no line crosses a label. Each label stands to the
 * right or the left of its own line. What finds no room is dropped, the least important first, and listed by index.
 */
export function placeLabels(requests: readonly LabelRequest[], space: LabelSpace): LabelPlacement {
  const byWorth = requests.map((_, i) => i).sort((a, b) => requests[b]!.importance - requests[a]!.importance || a - b);
  let chosen = byWorth;
  let placed = bestAttempt(chosen, requests, space);
  while (placed.length < chosen.length) {
    chosen = chosen.slice(0, -1);
    placed = bestAttempt(chosen, requests, space);
  }
  // What was dropped to make room for others may still find a gap.
  for (const index of byWorth.slice(chosen.length)) {
    const fit = lowestFit(index, SIDES[0]!, placed, requests, space);
    if (fit !== null) placed.push(fit);
  }
  const standing = new Set(placed.map((p) => p.index));
  return {
    placed: [...placed].sort((a, b) => a.index - b.index),
    dropped: requests.map((_, i) => i).filter((i) => !standing.has(i)),
    rowsUsed: placed.reduce((most, p) => Math.max(most, p.row + 1), 0),
  };
}
