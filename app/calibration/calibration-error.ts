/** Why a scale could not be calibrated, with what to do about it. */
export type CalibrationError = {
  readonly code: 'curve-unusable' | 'unit-differs' | 'too-few-lines' | 'does-not-fit' | 'ambiguous' | 'scale-folds';
  readonly message: string;
};
