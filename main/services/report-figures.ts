import type { Failure } from '../../app/contract/failure.ts';
import type { FindingView, RunView, SpectrumView } from '../../app/contract/work.ts';
import type { SourceFigure } from '../../app/report/content/report-source.ts';
import { ok, type Result } from '../../app/result.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { FigureOrder } from '../workers/tasks/report-figures.ts';
import type { Work } from './work-context.ts';

const holds = (spectrum: SpectrumView, finding: FindingView): boolean =>
  spectrum.analysis?.result.findings.some((fact) => fact.code === finding.code && fact.statement === finding.statement) === true;

/** The spectra that accepted findings rest on; neutral findings only where there are no others. */
export function decisiveSpectra(runs: readonly RunView[], findings: readonly FindingView[]): { run: RunView; spectrum: SpectrumView }[] {
  const accepted = findings.filter((finding) => finding.state === 'accepted' && finding.origin === 'analysis');
  const weighty = accepted.filter((finding) => finding.strength !== 'neutral');
  const chosen = weighty.length > 0 ? weighty : accepted;
  return runs.flatMap((run) => run.spectra
    .filter((spectrum) => chosen.some((finding) => finding.runId === run.id && holds(spectrum, finding)))
    .map((spectrum) => ({ run, spectrum })));
}

type Planned = { readonly stoneId: string; readonly run: RunView; readonly spectrum: SpectrumView; readonly order: FigureOrder };

/** Which spectra are printed: those that were chosen, in their order, else the decisive ones, at most `perStone` of each stone. */
export type FigureChoice = { readonly chosen: readonly string[] | null; readonly perStone: number | null };

type StoneEvidence = { readonly stone: { readonly id: string }; readonly runs: readonly RunView[]; readonly findings: readonly FindingView[] };

function spectraOf({ runs, findings }: StoneEvidence, { chosen, perStone }: FigureChoice): { run: RunView; spectrum: SpectrumView }[] {
  if (chosen === null) return decisiveSpectra(runs, findings).slice(0, perStone ?? undefined);
  const all = runs.flatMap((run) => run.spectra.map((spectrum) => ({ run, spectrum })));
  return chosen.flatMap((id) => all.find(({ spectrum }) => spectrum.id === id) ?? []);
}

async function planFigures(stones: readonly StoneEvidence[], choice: FigureChoice, { stores }: Work): Promise<Result<Planned[], Failure>> {
  const planned: Planned[] = [];
  for (const entry of stones) {
    const { stone, findings } = entry;
    for (const { run, spectrum } of spectraOf(entry, choice)) {
      const stored = await stores.spectra.get(spectrum.id);
      const setAside = findings.filter((finding) => finding.runId === run.id && finding.state === 'set-aside').map((finding) => finding.code);
      if (!stored.ok) return stored;
      const { curve, parameters } = stored.value;
      if (parameters !== null) planned.push({ stoneId: stone.id, run, spectrum, order: { spectrum: curve, parameters, setAside } });
    }
  }
  return ok(planned);
}

/** The spectra to print of each stone, drawn in a worker thread. */
export async function figuresByStone(stones: readonly StoneEvidence[], choice: FigureChoice, work: Work): Promise<Result<Map<string, SourceFigure[]>, Failure>> {
  const plan = await planFigures(stones, choice, work);
  if (!plan.ok) return plan;
  const planned = plan.value;
  const byStone = new Map<string, SourceFigure[]>();
  if (planned.length === 0) return ok(byStone);
  const task = await work.pool.run('report-figures', planned.map(({ order }) => order), {
    signal: work.call.signal, onProgress: (step) => work.call.emit({ kind: 'progress', task: 'report', ...step }),
  });
  if (!task.ok) return taskFailure(task.error);
  planned.forEach(({ stoneId, run, spectrum }, index) => {
    const figure = task.value[index];
    if (!figure) return;
    const sha256 = run.files.find((file) => file.name === spectrum.fileName)?.sha256 ?? '';
    byStone.set(stoneId, [...byStone.get(stoneId) ?? [], { run, fileName: spectrum.fileName, title: spectrum.title, sha256, figure }]);
  });
  return ok(byStone);
}
