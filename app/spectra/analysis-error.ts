/** Why a curve can't be analysed. The message says what to do. */
export type AnalysisError = {
  readonly code:
    | 'length-mismatch' | 'too-few-points' | 'not-finite' | 'constant'
    | 'axis-unit-missing' | 'axis-wrong-for-method' | 'axis-implausible' | 'axis-not-monotonic'
    | 'laser-missing' | 'ordinate-wrong-for-method';
  readonly message: string;
};
