/** Sample-size code letters with the sample of normal single sampling, MIL-STD-105E (1989) tables I and II-A, which ISO 2859-1 took over. */
export const CODE_LETTERS = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'J', 'K', 'L', 'M', 'N', 'P', 'Q', 'R'] as const;
export type CodeLetter = (typeof CODE_LETTERS)[number];
const SAMPLES = [2, 3, 5, 8, 13, 20, 32, 50, 80, 125, 200, 315, 500, 800, 1250, 2000] as const;

export const INSPECTION_LEVELS = ['S-1', 'S-2', 'S-3', 'S-4', 'I', 'II', 'III'] as const;
export type InspectionLevel = (typeof INSPECTION_LEVELS)[number];

/** Largest lot of each row; the last row has no end. MIL-STD-105E table I. */
const LOT_ROWS = [8, 15, 25, 50, 90, 150, 280, 500, 1200, 3200, 10_000, 35_000, 150_000, 500_000, Number.POSITIVE_INFINITY] as const;
/** MIL-STD-105E table I, one letter a row. */
const LETTERS: Readonly<Record<InspectionLevel, string>> = {
  'S-1': 'AAAABBBBCCCCDDD', 'S-2': 'AAABBBCCCDDDEEE', 'S-3': 'AABBCCDDEEFFGGH', 'S-4': 'AABCCDEEFGGHJJK',
  I: 'AABCCDEFGHJKLMN', II: 'ABCDEFGHJKLMNPQ', III: 'BCDEFGHJKLMNPQR',
};

/** Acceptable quality levels in per cent. 0.65 to 2.5 were compared with a copy of table II-A; the others follow the table's diagonals, from memory. */
export const AQLS = [0.1, 0.15, 0.25, 0.4, 0.65, 1, 1.5, 2.5, 4, 6.5] as const;
export type Aql = (typeof AQLS)[number];
export const COMPARED_AQLS: readonly Aql[] = [0.65, 1, 1.5, 2.5];

/** Table II-A is the same along each diagonal: from the plan that accepts on none, one letter further each time. Arrows lead to the next plan. */
const DIAGONAL = [0, 'up', 'down', 1, 2, 3, 5, 7, 10, 14, 21] as const;
/** Letter that accepts on none at the strictest level of AQLS, 0.10 per cent: K. */
const NONE_AT_STRICTEST = CODE_LETTERS.indexOf('K');

function cell(letter: number, aql: number): number | 'up' | 'down' {
  const step = letter + aql - NONE_AT_STRICTEST;
  if (step < 0) return 'down';
  return DIAGONAL[step] ?? 'up';
}

export function codeLetter(lot: number, level: InspectionLevel): CodeLetter {
  return LETTERS[level][LOT_ROWS.findIndex((most) => lot <= most)] as CodeLetter;
}

export type AcceptancePlan = {
  /** Letter of the lot's size, and of the plan that its arrow leads to. */
  readonly letter: CodeLetter;
  readonly planLetter: CodeLetter;
  readonly sample: number;
  /** Accept on so many or fewer, refuse on `refuse` or more. */
  readonly accept: number;
  readonly refuse: number;
  /** The sample is the whole lot or more: every stone is tested. */
  readonly all: boolean;
};

/** Single sampling plan, normal inspection. An arrow brings the sample of the plan it leads to. The rules that switch between lots are not applied. */
export function acceptancePlan(lot: number, level: InspectionLevel, aql: Aql): AcceptancePlan {
  const letter = codeLetter(lot, level);
  const column = AQLS.indexOf(aql);
  let at = CODE_LETTERS.indexOf(letter);
  let found = cell(at, column);
  while (typeof found !== 'number') {
    at += found === 'down' ? 1 : -1;
    found = cell(at, column);
  }
  const sample = SAMPLES[at]!;
  return { letter, planLetter: CODE_LETTERS[at]!, sample: Math.min(sample, lot), accept: found, refuse: found + 1, all: sample >= lot };
}
