import type { LaboratoryView } from '../../contract/casebook.ts';
import type { CaseView, CustodyView, ItemView, PhotographView, StoneSummary } from '../../contract/cases.ts';
import type { PieceWeights } from '../../contract/lots.ts';
import type { ConclusionView, FindingView, RunView } from '../../contract/work.ts';
import type { FigureModel } from '../../figure/figure-model.ts';
import type { SourceLot } from './lot-part.ts';

/** A spectrum that a stone's findings rest on, ready to be drawn. */
export type SourceFigure = { readonly run: RunView; readonly fileName: string; readonly title: string; readonly sha256: string; readonly figure: FigureModel };

export type SourceStone = {
  readonly stone: StoneSummary; readonly item: ItemView; readonly runs: readonly RunView[]; readonly findings: readonly FindingView[];
  readonly conclusions: readonly ConclusionView[]; readonly figures: readonly SourceFigure[];
};

/** Everything of a case that its report is written from. */
export type ReportSource = {
  readonly laboratory: LaboratoryView;
  readonly logoBase64: string | null;
  readonly case: CaseView;
  readonly stones: readonly SourceStone[];
  /** In the ledger's order. */
  readonly custody: readonly CustodyView[];
  /** Bytes of the pictures to print, by photograph id. */
  readonly pictures: ReadonlyMap<string, string>;
  /** Lots with their results; weights of mounted stones by item. Absent where none is drawn. */
  readonly lots?: readonly SourceLot[];
  readonly weights?: readonly { readonly itemId: string; readonly weights: PieceWeights }[];
  /** Digests of the raw records that travel inside the report; absent where none is drawn. */
  readonly attached?: ReadonlySet<string>;
  /** UTC instant of issue or of the draft. */
  readonly at: string;
  /** Number, revision and issuer; null for a draft. */
  readonly issue: { readonly number: string; readonly revision: number; readonly by: string } | null;
};

export const photographsOf = (source: Pick<ReportSource, 'case'>): PhotographView[] =>
  [...source.case.photographs, ...source.case.parcels.flatMap((parcel) => parcel.items.flatMap((item) => item.photographs))];
