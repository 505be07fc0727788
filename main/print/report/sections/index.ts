import type { SectionId, SectionPart } from '../../../../app/report/sections/index.ts';
import type { ReportContext } from '../context.ts';
import { drawAmendment } from './amendment.ts';
import { drawConduct } from './conduct.ts';
import { drawCustody } from './custody.ts';
import { drawItems } from './items.ts';
import { drawLimits } from './limits.ts';
import { drawLots } from './lots.ts';
import { drawMethods } from './methods.ts';
import { drawMountedWeights } from './mounted-weights.ts';
import { drawOpinions } from './opinions.ts';
import { drawOverview } from './overview.ts';
import { drawParticulars } from './particulars.ts';
import { drawPieceMap } from './piece-map.ts';
import { drawRawRecords } from './raw-records.ts';
import { drawRemarks } from './remarks.ts';
import { drawResults } from './results.ts';
import { drawSignatures } from './signatures.ts';

/** Draws a section where the pen stands, under headings of level 2 and 3, everything inside elements of the structure or marked as an artifact. */
export type DrawSection<Id extends SectionId> = (context: ReportContext, part: SectionPart<Id>) => void;

/** The drawing of every section; one that is missing does not compile. */
export const DRAWINGS: { readonly [Id in SectionId]: DrawSection<Id> } = {
  amendment: drawAmendment, overview: drawOverview, opinions: drawOpinions, particulars: drawParticulars, 'piece-map': drawPieceMap, results: drawResults, lots: drawLots, 'mounted-weights': drawMountedWeights,
  remarks: drawRemarks, methods: drawMethods, conduct: drawConduct, limits: drawLimits,
  signatures: drawSignatures, items: drawItems, custody: drawCustody, 'raw-records': drawRawRecords,
};
