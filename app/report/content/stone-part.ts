import type { ConclusionView, FindingView, RunView } from '../../contract/work.ts';
import { COLOUR_CLASS_WORDS } from '../../domain/colour-class.ts';
import { CONCLUSION_WORDS } from '../../domain/conclusion.ts';
import { METHODS, METHOD_IDS } from '../../domain/method.ts';
import { findingWords } from '../finding-words.ts';
import type { ReportModel } from '../report-model.ts';
import { KIND_WORDS, weightText } from './item-part.ts';
import { localDate } from './local-time.ts';
import type { ReportSource, SourceFigure, SourceStone } from './report-source.ts';

type StonePart = ReportModel['stones'][number];

/** "laser 532 nm, 77 K, 500 ms": what a run was set to, as far as it says. */
export function settingsText(run: Pick<RunView, 'laserNm' | 'temperatureK' | 'integrationMs' | 'resolution'>, resolutionUnit = ''): string {
  return [
    run.laserNm === null ? '' : `laser ${run.laserNm} nm`, run.temperatureK === null ? '' : `${run.temperatureK} K`,
    run.integrationMs === null ? '' : `${run.integrationMs} ms`, run.resolution === null ? '' : `resolution ${run.resolution}${resolutionUnit}`,
  ].filter((text) => text !== '').join(', ');
}

function factsOf({ stone, item }: SourceStone, caseNumber: string): StonePart['facts'] {
  const weight = stone.weight === null ? { label: 'Weight', value: stone.mounted ? 'not weighed, mounted' : 'not weighed', mono: false } : { label: 'Weight', value: weightText(stone.weight, 'ct'), mono: true };
  return [
    { label: 'Item', value: `${caseNumber} / ${stone.label}`, mono: true },
    { label: 'Described as', value: [stone.mounted ? 'mounted' : 'loose', stone.shape].filter((text) => text.trim() !== '').join(', '), mono: false },
    ...(stone.position.trim() === '' ? [] : [{ label: 'Position', value: stone.position, mono: false }]),
    weight,
    ...(stone.measurements.trim() === '' ? [] : [{ label: 'Measured', value: stone.measurements, mono: true }]),
    { label: 'Colour class', value: COLOUR_CLASS_WORDS[stone.colourClass], mono: false },
    { label: 'From', value: `item ${item.label}, ${KIND_WORDS[item.kind]}`, mono: false },
  ];
}

/** What is reported: the newest conclusion, or undetermined where the second person does not agree with it. */
function conclusionOf(newest: ConclusionView | undefined, zone: string): StonePart['conclusion'] {
  if (newest === undefined) return null;
  const { confirmation } = newest;
  const common = { rules: newest.rules.replace(/^rules\s+/, ''), examiner: newest.by, concludedOn: localDate(newest.at, zone) };
  if (confirmation !== null && !confirmation.agrees) {
    return {
      ...common, id: 'undetermined', words: CONCLUSION_WORDS.undetermined, departure: '', secondPerson: '', confirmedOn: '',
      reasons: `The two persons who examined this stone do not agree. ${newest.by} concluded “${CONCLUSION_WORDS[newest.conclusion]}”; ${confirmation.by} did not agree on ${localDate(confirmation.at, zone)}: ${confirmation.reason}`,
    };
  }
  return {
    ...common, id: newest.conclusion, words: CONCLUSION_WORDS[newest.conclusion], reasons: newest.reasons, departure: newest.departure,
    secondPerson: confirmation?.by ?? '', confirmedOn: confirmation === null ? '' : localDate(confirmation.at, zone),
  };
}

const findingPart = (finding: FindingView): StonePart['findings'][number] => ({
  run: finding.run ?? '', method: METHODS[finding.method].name, statement: finding.statement, says: findingWords(finding.strength, finding.supports),
  strength: finding.strength, supports: finding.supports, caution: finding.caution ?? '', counts: finding.counts,
});

function figurePart({ run, fileName, title, sha256, figure }: SourceFigure): StonePart['figures'][number] {
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

/** Everything that the report says of one stone. */
export function stonePart(source: ReportSource, entry: SourceStone): StonePart {
  const { zone } = source.laboratory;
  const { stone, findings, conclusions } = entry;
  return {
    label: stone.label,
    heading: [stone.shape, stone.mounted ? 'mounted' : 'loose'].filter((text) => text.trim() !== '').join(', '),
    facts: factsOf(entry, source.case.number),
    conclusion: conclusionOf(conclusions.at(-1), zone),
    findings: findings.filter((finding) => finding.state === 'accepted').map(findingPart),
    setAside: findings.filter((finding) => finding.state === 'set-aside').map((finding) => ({ statement: finding.statement, reason: finding.reason })),
    figures: entry.figures.map(figurePart),
    notDone: notDone(entry),
  };
}
