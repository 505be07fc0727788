import { comparePair, type PairInput, type PairMark, type PairRefusal } from '../../../app/images/compare-pair.ts';
import { moveMarks } from '../../../app/images/move-marks.ts';
import type { PairResult } from '../../../app/images/pair-result.ts';
import type { Photograph } from '../../../app/images/photograph.ts';
import { suggestMarks } from '../../../app/images/suggest-marks.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import { releasePoints } from '../../images/release-points.ts';
import type { Task } from '../task.ts';

export type ComparePayload = Omit<PairInput, 'marks'> & {
  /** Null: the program looks for bright places on the long-wave photograph. */
  readonly marks: readonly PairMark[] | null;
  /** The photograph the marks were placed on, where it is another one than the long-wave photograph. */
  readonly ground: Photograph | null;
};

type Compared = Result<{ marks: readonly PairMark[]; result: PairResult }, PairRefusal>;

function compare({ ground, ...input }: ComparePayload): Compared {
  const placed = input.marks === null ? ok(suggestMarks(input.longWave)) : ground === null ? ok([...input.marks]) : moveMarks(input.marks, ground, input.longWave);
  if (!placed.ok) return err(placed.error);
  const compared = comparePair({ ...input, marks: placed.value });
  return compared.ok ? ok({ marks: placed.value, result: compared.value }) : compared;
}

/** Compares the two photographs of a piece; gives the marks back as they lie on the long-wave photograph. The photographs are used up. */
export const comparePairTask: Task<ComparePayload, Compared> = {
  run(payload) {
    try {
      return compare(payload);
    } finally {
      for (const photograph of [payload.longWave, payload.shortWave, payload.ground]) if (photograph !== null) releasePoints(photograph);
    }
  },
};
