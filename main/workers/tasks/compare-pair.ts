import { comparePair, type PairInput, type PairMark, type PairRefusal } from '../../../app/images/compare-pair.ts';
import { moveMarks } from '../../../app/images/move-marks.ts';
import type { PairResult } from '../../../app/images/pair-result.ts';
import type { Photograph } from '../../../app/images/photograph.ts';
import { suggestMarks } from '../../../app/images/suggest-marks.ts';
import { err, ok, type Result } from '../../../app/result.ts';
import type { Task } from '../task.ts';

export type ComparePayload = Omit<PairInput, 'marks'> & {
  /** Null: the program looks for bright places on the long-wave photograph. */
  readonly marks: readonly PairMark[] | null;
  /** The photograph the marks were placed on, where it is another one than the long-wave photograph. */
  readonly ground: Photograph | null;
};

/** Compares the two photographs of a piece; gives the marks back as they lie on the long-wave photograph. */
export const comparePairTask: Task<ComparePayload, Result<{ marks: readonly PairMark[]; result: PairResult }, PairRefusal>> = {
  run({ ground, ...input }) {
    const placed = input.marks === null ? ok(suggestMarks(input.longWave)) : ground === null ? ok([...input.marks]) : moveMarks(input.marks, ground, input.longWave);
    if (!placed.ok) return err(placed.error);
    const compared = comparePair({ ...input, marks: placed.value });
    return compared.ok ? ok({ marks: placed.value, result: compared.value }) : compared;
  },
};
