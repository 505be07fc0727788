import type { Arrangement } from './scenario-schema.ts';

/** Place and radius of a stone in a picture of width 1 and height 2/3. */
export type Spot = { readonly x: number; readonly y: number; readonly r: number };

const MIDDLE = { x: 1 / 2, y: 1 / 3 } as const;

function onEllipse(count: number, rx: number, ry: number, r: number): Spot[] {
  return Array.from({ length: count }, (_, i) => {
    const angle = -Math.PI / 2 + (2 * Math.PI * i) / count;
    return { x: MIDDLE.x + rx * Math.cos(angle), y: MIDDLE.y + ry * Math.sin(angle), r };
  });
}

/** A large stone in the middle and the others around it, the first at the top, clockwise. */
function rings(count: number): Spot[] {
  const around = onEllipse(Math.max(0, count - 1), 0.25, 0.245, 0.028);
  return [{ ...MIDDLE, r: 0.068 }, ...around].slice(0, count);
}

/** A large stone between smaller ones, or one alone. */
function row(count: number): Spot[] {
  return Array.from({ length: count }, (_, i) => {
    const fromMiddle = i === 0 ? 0 : Math.ceil(i / 2) * (i % 2 === 1 ? -1 : 1);
    return { x: MIDDLE.x + fromMiddle * 0.17, y: MIDDLE.y, r: i === 0 ? 0.075 : 0.052 };
  });
}

/** As they hang on a chain, the middle ones lowest and largest. */
function arc(count: number): Spot[] {
  return Array.from({ length: count }, (_, i) => {
    const u = count === 1 ? 0 : (2 * i) / (count - 1) - 1;
    return { x: MIDDLE.x + 0.4 * u, y: 0.5 - 0.3 * u * u, r: 0.042 - 0.012 * Math.abs(u) };
  });
}

/** The golden angle: no two stones of a lot lie in one line (H. Vogel, Math. Biosci. 44 (1979) 179). */
const GOLDEN_ANGLE = Math.PI * (3 - Math.sqrt(5));

function scatter(count: number): Spot[] {
  return Array.from({ length: count }, (_, i) => {
    const far = 0.27 * Math.sqrt((i + 0.5) / count);
    return { x: MIDDLE.x + 1.25 * far * Math.cos(i * GOLDEN_ANGLE), y: MIDDLE.y + 0.95 * far * Math.sin(i * GOLDEN_ANGLE), r: 0.026 };
  });
}

/** Where the stones lie, in the order of their labels. The same count always lies the same way. */
export function arrangeStones(arrangement: Arrangement, count: number): Spot[] {
  switch (arrangement) {
    case 'single': return count === 0 ? [] : [{ ...MIDDLE, r: 0.13 }];
    case 'row': return row(count);
    case 'arc': return arc(count);
    case 'rings': return rings(count);
    case 'scatter': return scatter(count);
  }
}
