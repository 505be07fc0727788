import type { ParsedInput } from '../../app/contract/index.ts';
import type { Failure } from '../../app/contract/failure.ts';
import type { PhotoAnalysisContent, PhotoAnalysisView } from '../../app/contract/images.ts';
import type { FindingFact } from '../../app/domain/finding.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { decayFindings } from '../../app/images/decay-findings.ts';
import { pairFindings } from '../../app/images/pair-findings.ts';
import { polariserFindings } from '../../app/images/polariser-findings.ts';
import { checkRun } from '../../app/runs/check-run.ts';
import { ok, type Result } from '../../app/result.ts';
import type { NewRun, NewRunFile } from '../../db/store/runs-write.ts';
import { notFound, refused } from './failures.ts';
import { sourcesOf, type Source } from './image-sources.ts';
import { asFailure, type ChangingWork } from './work-context.ts';

/** What an analysis brings to a stone's run: its method, its photographs in order, its findings. */
type Proposal = { readonly method: MethodId; readonly note: string; readonly photographIds: readonly string[]; findings(stoneId: string): readonly FindingFact[] | null };

function proposalOf(content: PhotoAnalysisContent): Proposal {
  switch (content.kind) {
    case 'pair': {
      const { parameters: { longWave, shortWave }, result } = content;
      return {
        method: 'fluorescence-short-wave', note: 'Long-wave and short-wave compared on photographs.', photographIds: [longWave.photographId, shortWave.photographId],
        findings: (stoneId) => factsOf(result.stones, stoneId, (stone) => pairFindings(stone, result)),
      };
    }
    case 'decay': return {
      method: 'phosphorescence', note: 'After-glow measured on photographs.', photographIds: content.parameters.frames.map((frame) => frame.photographId),
      findings: (stoneId) => factsOf(content.result.stones, stoneId, decayFindings),
    };
    case 'polarisers': return {
      method: 'crossed-polarisers', note: 'Strain read on a photograph.', photographIds: [content.parameters.photograph.photographId],
      findings: (stoneId) => factsOf(content.result.stones, stoneId, ({ pattern }) => (pattern === null ? null : polariserFindings(pattern))),
    };
  }
}

/** What an analysis says of one stone; null where it did not measure it. */
function factsOf<S extends { readonly stoneId: string | null }>(stones: readonly S[], stoneId: string, say: (stone: S) => readonly FindingFact[] | null): readonly FindingFact[] | null {
  const stone = stones.find((one) => one.stoneId === stoneId);
  return stone === undefined ? null : say(stone);
}

/** The photographs as files of the run; the case keeps their bytes already, and the record is shared. */
const fileOf = ({ content: { name, bytes, sha256, mediaType } }: Source): NewRunFile =>
  ({ name, bytes, sha256, mediaType, outcome: 'read', format: null, reader: '', warnings: [], error: null, curves: [] });

/** Gives stones a run each, with the photographs and the findings proposed from the analysis. */
export async function proposeFromPhotographs({ analysisId, stoneIds, cautions }: ParsedInput<'images.propose'>, work: ChangingWork): Promise<Result<PhotoAnalysisView, Failure>> {
  const { stores, change } = work;
  const analysis = await stores.photoAnalyses.get(analysisId);
  if (analysis === null) return notFound('This analysis');
  const proposal = proposalOf(analysis.content);
  const sources = await sourcesOf(work, analysis.itemId, proposal.photographIds);
  if (!sources.ok) return sources;
  const files = sources.value.map(fileOf);
  const runs: NewRun[] = [];
  for (const stoneId of new Set(stoneIds)) {
    const place = await stores.runs.place(stoneId);
    const measured = proposal.findings(stoneId);
    if (place === null || place.itemId !== analysis.itemId) return notFound('A stone of this item');
    if (measured === null) return refused(`${place.stoneLabel} was not measured in this analysis.`, 'Tie its mark to it on the map, then compare again.');
    const allowed = checkRun({ method: proposal.method, temperatureK: null, cautions, observation: null, measured: true, fileCount: files.length }, place, null);
    if (!allowed.ok) return asFailure(allowed.error);
    runs.push({
      stoneId, method: proposal.method, instrumentId: null, instrumentState: 'no-instrument', laserNm: null, temperatureK: null, integrationMs: null, resolution: null,
      cautions, observation: null, note: proposal.note, files, observed: [], measured, remembers: null,
    });
  }
  const given = await stores.photoAnalyses.giveRuns(change, analysisId, runs);
  return given.ok ? ok(given.value) : given;
}
