import type { AnalysisOf, PhotoAnalysisContent } from '../../app/contract/images.ts';
import type { PieceView } from '../../app/contract/pieces.ts';

/** What a page for one kind of measurement is given. */
export type PageProps<K extends PhotoAnalysisContent['kind']> = {
  readonly piece: PieceView;
  /** Of this kind, newest first. */
  readonly analyses: readonly AnalysisOf<K>[];
  /** The analysis that the address names, where it names one. */
  readonly chosen: string | undefined;
  /** True while a further measurement is being asked for. */
  readonly anew: boolean;
  readonly onAnew: (anew: boolean) => void;
  readonly onOpen: (analysisId: string) => void;
};
