import type { LaboratoryView } from '../../contract/casebook.ts';
import type { CaseView, ItemView, PhotographView, StoneSummary } from '../../contract/cases.ts';
import type { CustodyView } from '../../contract/custody.ts';
import type { PieceWeights } from '../../contract/lots.ts';
import type { ConclusionView, FindingView, RunView } from '../../contract/work.ts';
import type { DraftContent } from '../draft/draft-content.ts';
import type { HouseTexts } from '../texts/text-kinds.ts';
import type { FigureModel } from '../../figure/figure-model.ts';
import type { SourceLot } from './lot-part.ts';
import type { SourceMap } from './map-part.ts';

/** A spectrum that a stone's findings rest on, ready to be drawn. */
export type SourceFigure = { readonly run: RunView; readonly fileName: string; readonly title: string; readonly sha256: string; readonly figure: FigureModel };

export type SourceStone = {
  readonly stone: StoneSummary; readonly item: ItemView; readonly runs: readonly RunView[]; readonly findings: readonly FindingView[];
  readonly conclusions: readonly ConclusionView[]; readonly figures: readonly SourceFigure[];
  /** True where there is a conclusion that is not shown to the person who looks. */
  readonly withheld?: boolean;
};

/** What a person wrote for this report alone. */
export type ReportWriting = Pick<DraftContent, 'remarks' | 'statements' | 'notApplicable'>;

/** Nothing written: the laboratory's texts stand. */
export const NOTHING_WRITTEN: ReportWriting = { remarks: '', statements: { place: '', conditions: '', sampling: '', external: '' }, notApplicable: {} };

/** Everything of what is reported that its report is written from: of the case, only what belongs to the subject. */
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
  /** Maps of the pieces; absent where none is drawn. */
  readonly maps?: readonly SourceMap[];
  /** Digests of the raw records that travel inside the report; absent where none is drawn. */
  readonly attached?: ReadonlySet<string>;
  readonly texts: HouseTexts;
  readonly writing: ReportWriting;
  /** UTC instant of issue or of the draft. */
  readonly at: string;
  /** Number, revision and issuer; null for a draft. */
  readonly issue: { readonly number: string; readonly revision: number; readonly by: string } | null;
};

export const photographsOf = (source: Pick<ReportSource, 'case'>): PhotographView[] =>
  [...source.case.photographs, ...source.case.parcels.flatMap((parcel) => parcel.items.flatMap((item) => item.photographs))];

/** True where something was tested or seen on a stone: a run, or what an examiner wrote down without one. */
export const wasExamined = ({ runs, findings, conclusions }: Pick<SourceStone, 'runs' | 'findings' | 'conclusions'>): boolean =>
  runs.length > 0 || findings.some((finding) => finding.origin === 'examiner' && finding.state === 'accepted') || conclusions.length > 0;
