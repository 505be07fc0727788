import type { Rect } from '../figure/drawing.ts';

/** A mark as it is drawn: centre and radius in px (points on paper), and the size of the box with its number. */
export type PlacedMark = { readonly id: string; readonly x: number; readonly y: number; readonly radius: number; readonly width: number; readonly height: number };

/** The box of a mark's number, and the line from the box to the edge of the stone. */
export type MarkLabel = Rect & { readonly id: string; readonly leader: { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number } };

/** Clear px between two boxes. */
const APART = 2;
/** px between the stone's edge and its box, nearest first; further rings grow by GROWTH. */
const RINGS = [8, 14, 22, 32, 46, 64] as const;
const GROWTH = 1.3;
/** Directions tried: straight away from the middle of the piece first, then turned to both sides. */
const TURNS = 24;
/** What a place costs, in px of distance: common sense, tuned by eye on rings, rows and scattered stones. */
const COST = { turn: 7, coversStone: 60, crossesLeader: 50, crossesLabel: 90, crossesStone: 35 } as const;
/** Leaders longer than this are only looked at where nothing nearer is free. */
const LONGEST_SEARCH = 40;

type Segment = MarkLabel['leader'];

const overlaps = (a: Rect, b: Rect, apart: number): boolean =>
  a.x < b.x + b.width + apart && b.x < a.x + a.width + apart && a.y < b.y + b.height + apart && b.y < a.y + a.height + apart;

const side = (ax: number, ay: number, bx: number, by: number, px: number, py: number): number => (bx - ax) * (py - ay) - (by - ay) * (px - ax);

function crosses(a: Segment, b: Segment): boolean {
  const d1 = side(b.x1, b.y1, b.x2, b.y2, a.x1, a.y1);
  const d2 = side(b.x1, b.y1, b.x2, b.y2, a.x2, a.y2);
  const d3 = side(a.x1, a.y1, a.x2, a.y2, b.x1, b.y1);
  const d4 = side(a.x1, a.y1, a.x2, a.y2, b.x2, b.y2);
  return d1 * d2 < 0 && d3 * d4 < 0;
}

/** Whether a line passes through a box: its middle part is looked at, since its own ends touch what it joins. */
function passes(line: Segment, box: Rect): boolean {
  const { x, y, width, height } = box;
  const [right, bottom] = [x + width, y + height];
  if (Math.max(line.x1, line.x2) < x || Math.min(line.x1, line.x2) > right || Math.max(line.y1, line.y2) < y || Math.min(line.y1, line.y2) > bottom) return false;
  const corners = [side(line.x1, line.y1, line.x2, line.y2, x, y), side(line.x1, line.y1, line.x2, line.y2, right, y),
    side(line.x1, line.y1, line.x2, line.y2, x, bottom), side(line.x1, line.y1, line.x2, line.y2, right, bottom)];
  return corners.some((c) => c > 0) && corners.some((c) => c < 0);
}

/** Distance of a point from a line's nearest point. */
function awayFrom({ x1, y1, x2, y2 }: Segment, x: number, y: number): number {
  const [dx, dy] = [x2 - x1, y2 - y1];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.max(0, Math.min(1, ((x - x1) * dx + (y - y1) * dy) / length));
  return Math.hypot(x - x1 - t * dx, y - y1 - t * dy);
}

const coversStone = (box: Rect, stone: PlacedMark): boolean => {
  const nearestX = Math.max(box.x, Math.min(stone.x, box.x + box.width));
  const nearestY = Math.max(box.y, Math.min(stone.y, box.y + box.height));
  return Math.hypot(stone.x - nearestX, stone.y - nearestY) < stone.radius;
};

const inside = (box: Rect, bounds: Rect | null): boolean =>
  bounds === null || (box.x >= bounds.x && box.y >= bounds.y && box.x + box.width <= bounds.x + bounds.width && box.y + box.height <= bounds.y + bounds.height);

/** The box at a distance from a stone's edge in a direction, with its leader. */
function labelAt(stone: PlacedMark, angle: number, gap: number): MarkLabel {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const { width, height } = stone;
  // From the middle of the box to its edge along the leader.
  const half = Math.min(width / 2 / Math.max(1e-9, Math.abs(cos)), height / 2 / Math.max(1e-9, Math.abs(sin)));
  const far = stone.radius + gap + half;
  const [cx, cy] = [stone.x + cos * far, stone.y + sin * far];
  return {
    id: stone.id, x: cx - width / 2, y: cy - height / 2, width, height,
    leader: { x1: stone.x + cos * stone.radius, y1: stone.y + sin * stone.radius, x2: cx - cos * half, y2: cy - sin * half },
  };
}

/** The same for a box whose place is given. */
function labelInBox(stone: PlacedMark, x: number, y: number): MarkLabel {
  const { width, height } = stone;
  const angle = Math.atan2(y + height / 2 - stone.y, x + width / 2 - stone.x);
  const half = Math.min(width / 2 / Math.max(1e-9, Math.abs(Math.cos(angle))), height / 2 / Math.max(1e-9, Math.abs(Math.sin(angle))));
  return {
    id: stone.id, x, y, width, height,
    leader: { x1: stone.x + Math.cos(angle) * stone.radius, y1: stone.y + Math.sin(angle) * stone.radius, x2: x + width / 2 - Math.cos(angle) * half, y2: y + height / 2 - Math.sin(angle) * half },
  };
}

type Laid = { readonly labels: MarkLabel[]; readonly stones: readonly PlacedMark[]; readonly bounds: Rect | null };

const free = (box: Rect, { labels, bounds }: Laid): boolean => inside(box, bounds) && !labels.some((label) => overlaps(label, box, APART));

/** Cost of a free place, or nothing as soon as it is no better than `best`. */
function costOf(candidate: MarkLabel, base: number, own: PlacedMark, { labels, stones }: Laid, best: number): number | null {
  let cost = base;
  for (const stone of stones) {
    if (stone !== own && coversStone(candidate, stone)) cost += COST.coversStone;
    else if (stone !== own && awayFrom(candidate.leader, stone.x, stone.y) < stone.radius) cost += COST.crossesStone;
    if (cost >= best) return null;
  }
  for (const label of labels) {
    if (crosses(candidate.leader, label.leader)) cost += COST.crossesLeader;
    if (passes(candidate.leader, label) || passes(label.leader, candidate)) cost += COST.crossesLabel;
    if (cost >= best) return null;
  }
  return cost;
}

/** First free place of a box anywhere inside the bounds, row by row. */
function anywhere(stone: PlacedMark, laid: Laid): MarkLabel | null {
  const { bounds } = laid;
  if (bounds === null) return null;
  const found: MarkLabel[] = [];
  for (let y = bounds.y; y + stone.height <= bounds.y + bounds.height; y += stone.height / 2) {
    for (let x = bounds.x; x + stone.width <= bounds.x + bounds.width; x += stone.width / 4) {
      const label = labelInBox(stone, x, y);
      if (free(label, laid)) found.push(label);
    }
  }
  const far = ({ leader }: MarkLabel): number => Math.hypot(leader.x2 - leader.x1, leader.y2 - leader.y1);
  return found.reduce<MarkLabel | null>((near, label) => (near === null || far(label) < far(near) ? label : near), null);
}

function placeOne(stone: PlacedMark, outward: number, laid: Laid): MarkLabel {
  let best: { label: MarkLabel; cost: number } | null = null;
  let gap: number = RINGS[0];
  for (let ring = 0; ring < LONGEST_SEARCH; ring += 1) {
    gap = RINGS[ring] ?? gap * GROWTH;
    if (best !== null && gap >= best.cost) break;
    for (let turn = 0; turn < TURNS; turn += 1) {
      const turned = Math.ceil(turn / 2) * (turn % 2 === 1 ? 1 : -1);
      const base = gap + Math.abs(turned) * COST.turn;
      if (best !== null && base >= best.cost) continue;
      const label = labelAt(stone, outward + turned * 2 * Math.PI / TURNS, gap);
      if (!free(label, laid)) continue;
      const cost = costOf(label, base, stone, laid, best?.cost ?? Number.POSITIVE_INFINITY);
      if (cost !== null) best = { label, cost };
    }
  }
  return best?.label ?? anywhere(stone, laid) ?? placeOne(stone, outward, { ...laid, bounds: null });
}

/**
 * Where the numbers of marks stand: each beside its stone, on the side away from the middle of the piece, further off and with a leader where
 * stones crowd. No two boxes overlap, ever. Inside `bounds` as long as there is room for it in them; null: wherever there is room.
 * The same marks give the same places, whatever their order; time grows with the square of their count (200 marks: some 20 ms).
 */
export function labelMarks(marks: readonly PlacedMark[], bounds: Rect | null = null): MarkLabel[] {
  if (marks.length === 0) return [];
  // Sums depend on their order in the last digit, so the marks are summed in the order of their ids.
  const named = marks.toSorted((a, b) => (a.id < b.id ? -1 : 1));
  const middle = { x: named.reduce((sum, m) => sum + m.x, 0) / marks.length, y: named.reduce((sum, m) => sum + m.y, 0) / marks.length };
  const far = (mark: PlacedMark): number => Math.hypot(mark.x - middle.x, mark.y - middle.y);
  // From inside outwards: the inner ones have the least room to give way.
  const order = named.toSorted((a, b) => far(a) - far(b));
  const laid: Laid = { labels: [], stones: order, bounds };
  for (const mark of order) {
    const outward = far(mark) < mark.radius / 2 ? -Math.PI / 4 : Math.atan2(mark.y - middle.y, mark.x - middle.x);
    laid.labels.push(placeOne(mark, outward, laid));
  }
  const byId = new Map(laid.labels.map((label) => [label.id, label]));
  return marks.map((mark) => byId.get(mark.id)!);
}
