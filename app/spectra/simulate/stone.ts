import type { SeededRandom } from './seeded-random.ts';
import { seededRandom } from './seeded-random.ts';

export const STONE_KINDS = [
  'natural-ia', 'natural-iia', 'natural-iia-silicon', 'natural-iib', 'natural-ib', 'natural-hpht-treated', 'natural-irradiated',
  'cvd-as-grown', 'cvd-treated', 'hpht', 'hpht-iib', 'moissanite', 'cubic-zirconia', 'glass', 'corundum',
] as const;
export type StoneKind = (typeof STONE_KINDS)[number];

/** What the simulator needs to know of a stone. Invented, within published ranges. */
export type SimulatedStone = {
  readonly kind: StoneKind;
  readonly isDiamond: boolean;
  /** Light path through the stone, mm. */
  readonly pathMm: number;
  /** Nitrogen, atomic ppm. */
  readonly nitrogenPpm: { readonly A: number; readonly B: number; readonly C: number; readonly Nplus: number };
  readonly boronPpm: number;
  /** Absorption coefficients at the maximum, cm-1 base e. */
  readonly line3107: number;
  readonly line3123: number;
  /** Emission of each centre: height of its line against the diamond line, by id of the table of optical centres. */
  readonly emission: Readonly<Record<string, number>>;
  /** Absorption of each centre at its line, cm-1 base e. */
  readonly absorption: Readonly<Record<string, number>>;
  /** Broad luminescence against the diamond line: centre and width in nm, height. */
  readonly glow: readonly { readonly nm: number; readonly fwhmNm: number; readonly height: number }[];
};

const NO_NITROGEN = { A: 0, B: 0, C: 0, Nplus: 0 } as const;
type Recipe = Partial<Omit<SimulatedStone, 'kind' | 'pathMm'>>;

function recipe(kind: StoneKind, r: SeededRandom): Recipe {
  switch (kind) {
    case 'natural-ia': {
      const total = r.logBetween(60, 900);
      const share = r.between(0.1, 0.6);
      const n3 = r.logBetween(1, 12);
      return {
        nitrogenPpm: { A: total * (1 - share), B: total * share, C: 0, Nplus: 0 }, line3107: r.logBetween(0.3, 4),
        emission: { N3: n3, H3: 0.15 * n3, H4: 0.05 * n3, NV0: r.between(0.01, 0.08), 'NV-': r.between(0.01, 0.06), NI787: r.between(0.02, 0.08), NI794: r.between(0.02, 0.1), NI700: r.between(0.02, 0.1) },
        absorption: { N3: r.between(0.6, 2.5), N2: r.between(0.15, 0.4) }, glow: [{ nm: 460, fwhmNm: 110, height: 0.3 * n3 }, { nm: 620, fwhmNm: 160, height: r.between(0.05, 0.2) }],
      };
    }
    case 'natural-iia': return {
      emission: { NV0: r.between(0.1, 0.5), 'NV-': r.between(0.05, 0.3), GR1: r.between(0.05, 0.2), H3: r.between(0.05, 0.3), DEF569: 0.04, DEF579: 0.03 },
      glow: [{ nm: 425, fwhmNm: 80, height: r.between(0.3, 1.5) }],
    };
    case 'natural-iia-silicon': return {
      emission: { NV0: 0.2, 'NV-': 0.15, SIV: r.between(0.3, 1), NAT550: 0.15, NAT554: 0.1, NAT590: 0.12, GR1: 0.04 }, glow: [{ nm: 425, fwhmNm: 80, height: 0.5 }],
    };
    case 'natural-iib': return { boronPpm: r.between(0.1, 0.5), emission: { B648: r.between(0.05, 0.2), GR1: 0.08 }, glow: [{ nm: 500, fwhmNm: 120, height: 0.2 }] };
    case 'natural-ib': return { nitrogenPpm: { A: r.between(3, 10), B: 0, C: r.between(40, 120), Nplus: r.between(2, 8) }, emission: { NV0: 1.5, 'NV-': 2.5 }, absorption: {}, glow: [{ nm: 650, fwhmNm: 150, height: 0.4 }] };
    case 'natural-hpht-treated': return { emission: { NV0: 0.3, 'NV-': 0.9, H3: r.between(0.5, 2) }, absorption: { H3: r.between(0.05, 0.3), H2: 0.1 }, glow: [{ nm: 430, fwhmNm: 80, height: 0.6 }] };
    case 'natural-irradiated': return {
      nitrogenPpm: { A: r.between(100, 300), B: r.between(50, 200), C: 0, Nplus: 0 }, line3107: 0.8,
      emission: { N3: 2, GR1: r.between(1, 4), '3H': 0.6, RAD488: 0.2, '595': 0.1 }, absorption: { N3: 1.2, N2: 0.25, GR1: r.between(1, 4) }, glow: [{ nm: 480, fwhmNm: 120, height: 0.5 }],
    };
    case 'cvd-as-grown': {
      const nv = r.logBetween(3, 40);
      return {
        nitrogenPpm: { ...NO_NITROGEN, C: r.between(0, 0.5) }, line3123: r.between(0.1, 0.8),
        emission: { NV0: nv, 'NV-': 0.7 * nv, SIV: r.logBetween(0.5, 8), CVD596: 0.12 * nv, CVD597: 0.1 * nv, CVD533: 0.04 * nv, CVD563: 0.03 * nv, CVD468: 0.4 },
        absorption: { SIV: r.between(0.02, 0.3) }, glow: [{ nm: 650, fwhmNm: 150, height: 0.15 * nv }],
      };
    }
    case 'cvd-treated': return {
      emission: { NV0: r.between(0.4, 1.5), 'NV-': r.between(0.8, 3), SIV: r.logBetween(0.5, 6), H3: r.between(0.8, 4) }, absorption: { H3: 0.08, SIV: r.between(0.02, 0.3) }, glow: [{ nm: 530, fwhmNm: 110, height: 0.5 }],
    };
    case 'hpht': return { emission: { NI883: r.between(0.3, 3), NI484: 0.15, 'NV-': r.between(0.02, 0.15), NV0: r.between(0.02, 0.1), SIV: r.between(0, 1) > 0.5 ? 0.3 : 0 }, absorption: {}, boronPpm: r.between(0.005, 0.02), glow: [{ nm: 480, fwhmNm: 100, height: 0.3 }] };
    case 'hpht-iib': return { emission: { NI883: r.between(0.2, 1) }, boronPpm: r.between(0.15, 0.8), glow: [{ nm: 480, fwhmNm: 100, height: 0.3 }] };
    case 'moissanite': case 'corundum': return { isDiamond: false, glow: [{ nm: 560, fwhmNm: 150, height: 0.15 }] };
    case 'cubic-zirconia': case 'glass': return { isDiamond: false, glow: [{ nm: 540, fwhmNm: 160, height: 1 }] };
  }
}

/** A stone of this kind with values scattered within published ranges; the seed fixes it. `change` overrides any of them. */
export function simulatedStone(kind: StoneKind, seed: number, change: Partial<SimulatedStone> = {}): SimulatedStone {
  const r = seededRandom(seed);
  return {
    kind, isDiamond: true, pathMm: r.between(1.8, 3.6), nitrogenPpm: NO_NITROGEN, boronPpm: 0, line3107: 0, line3123: 0, emission: {}, absorption: {}, glow: [],
    ...recipe(kind, r), ...change,
  };
}
