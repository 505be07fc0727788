import type { FindingView, RunView } from '../../contract/work.ts';
import { COLOUR_CLASS_WORDS } from '../../domain/colour-class.ts';
import type { HouseSettings } from '../../domain/house-settings.ts';
import { METHODS, METHOD_IDS } from '../../domain/method.ts';
import { resolutionUnit } from '../../domain/resolution-unit.ts';
import type { ReportFact } from '../fact.ts';
import type { ResultsPart } from '../sections/results.ts';
import { KIND_WORDS } from './item-part.ts';
import { dimensionsText } from './dimensions-text.ts';
import type { ReportSource, SourceFigure, SourceStone } from './report-source.ts';
import { weighedText } from './weight-text.ts';

export type StoneResult = ResultsPart['stones'][number];

/** Number of a finding within its stone, by which the opinion names it. */
export const findingNumber = (index: number): string => `F${index + 1}`;

/** The findings that are printed, in the order of their numbers. */
export const acceptedFindings = ({ findings }: SourceStone): FindingView[] => findings.filter((finding) => finding.state === 'accepted');

/** What a stone is called beside its label: "round brilliant, mounted". */
export const stoneHeading = (stone: SourceStone['stone']): string => [stone.shape, stone.mounted ? 'mounted' : 'loose'].filter((text) => text.trim() !== '').join(', ');

/** "laser 532 nm, 77 K, 500 ms": what a run was set to, as far as it says. */
export function settingsText(run: Pick<RunView, 'method' | 'laserNm' | 'temperatureK' | 'integrationMs' | 'resolution'>): string {
  return [
    run.laserNm === null ? '' : `laser ${run.laserNm} nm`, run.temperatureK === null ? '' : `${run.temperatureK} K`,
    run.integrationMs === null ? '' : `${run.integrationMs} ms`, run.resolution === null ? '' : `resolution ${run.resolution} ${resolutionUnit(run.method)}`,
  ].filter((text) => text !== '').join(', ');
}

function factsOf({ stone, item }: SourceStone, caseNumber: string, settings: HouseSettings): ReportFact[] {
  const weight = stone.weight === null ? { label: 'Weight', value: stone.mounted ? 'not weighed, mounted' : 'not weighed', mono: false } : { label: 'Weight', value: weighedText(stone.weight, 'ct', settings), mono: true };
  return [
    { label: 'Item', value: `${caseNumber} / ${stone.label}`, mono: true },
    { label: 'Described as', value: [stone.mounted ? 'mounted' : 'loose', stone.shape].filter((text) => text.trim() !== '').join(', '), mono: false },
    ...(stone.position.trim() === '' ? [] : [{ label: 'Position', value: stone.position, mono: false }]),
    weight,
    ...(stone.measurements.trim() === '' ? [] : [{ label: 'Measured', value: dimensionsText(stone, settings), mono: true }]),
    { label: 'Colour class', value: COLOUR_CLASS_WORDS[stone.colourClass], mono: false },
    { label: 'From', value: `item ${item.label}, ${KIND_WORDS[item.kind]}`, mono: false },
  ];
}

const findingPart = (finding: FindingView, index: number): StoneResult['findings'][number] => ({
  no: findingNumber(index), run: finding.run ?? '', method: METHODS[finding.method].name, statement: finding.statement, caution: finding.caution ?? '',
});

function figurePart({ run, fileName, title, sha256, figure }: SourceFigure): StoneResult['figures'][number] {
  const settings = settingsText({ ...run, integrationMs: null, resolution: null });
  const named = figure.lines.map((line) => `${line.name} at ${line.position}`).join(', ');
  return {
    heading: [METHODS[run.method].name, settings].filter((text) => text !== '').join(', '),
    caption: `${run.number}, file ${fileName}${title === '' || fileName.startsWith(title) ? '' : ` (${title})`}, SHA-256 ${sha256.slice(0, 4)} ${sha256.slice(4, 8)} … ${sha256.slice(-4)}.`,
    alt: `${METHODS[run.method].name} spectrum of run ${run.number}, ${figure.xLabel}. ${named === '' ? 'No named line.' : `Named lines: ${named}.`}`,
    figure,
  };
}

/** What was not tested, why where the mounting forbids it, and whether the protocol the conclusion was made under asked for it. */
function notDone({ stone, item, runs, conclusions }: SourceStone): string[] {
  const done = new Set(runs.map((run) => run.method));
  const protocol = conclusions.at(-1)?.proposal.basis?.protocol;
  return METHOD_IDS.filter((method) => !done.has(method)).map((method) => {
    const { name, possibleMounted } = METHODS[method];
    const barred = stone.mounted && (possibleMounted === 'no' || (possibleMounted === 'open-back' && item.setting !== 'open-back'));
    if (barred) return `${name}: not possible as mounted`;
    return protocol?.asks.includes(method) === true ? `${name}: asked for by the protocol “${protocol.name}”, not done` : name;
  });
}

/** What was measured and seen on one stone. */
export function stoneResult(source: ReportSource, entry: SourceStone): StoneResult {
  const { stone, findings } = entry;
  return {
    label: stone.label, heading: stoneHeading(stone), facts: factsOf(entry, source.case.number, source.laboratory.settings),
    figures: entry.figures.map(figurePart),
    findings: acceptedFindings(entry).map(findingPart),
    setAside: findings.filter((finding) => finding.state === 'set-aside').map((finding) => ({ statement: finding.statement, reason: finding.reason })),
    notDone: notDone(entry),
  };
}
