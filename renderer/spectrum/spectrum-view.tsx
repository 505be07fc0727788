import { useCallback, useMemo, useRef, useState } from 'react';
import type { RunView } from '../../app/contract/work.ts';
import { INSTRUMENT_STATE_WORDS } from '../../app/domain/instrument-state.ts';
import { METHODS } from '../../app/domain/method.ts';
import { resolutionUnit } from '../../app/domain/resolution-unit.ts';
import { axesFor, AXIS_STYLE } from '../../app/figure/figure-axes.ts';
import { FIGURE_AXES, type FigureAxis, type FigureModel } from '../../app/figure/figure-model.ts';
import { lineLabel } from '../../app/runs/line-label.ts';
import { spectrumFigure } from '../../app/figure/spectrum-figure.ts';
import { analysableMethod, analysisParameters, type AnalysisParameters, type PeakResult } from '../../app/spectra/analysis.ts';
import { convertPosition } from '../../app/spectra/convert-axis.ts';
import { useHouse } from '../house/house-context.tsx';
import { Choice, Segmented } from '../look/choice.tsx';
import { Empty, Trouble, Working } from '../look/empty.tsx';
import { showShortDay } from '../look/time.ts';
import { Field } from '../look/field.tsx';
import { readNumber } from '../look/read-number.ts';
import { useAsk, useAskAll } from '../queries.ts';
import { columnsFor } from './columns-for.ts';
import { AXIS_WORDS, usualAxis } from './axis-words.ts';
import { diamondSentence } from './diamond-sentence.ts';
import { ExportPanel } from './export-panel.tsx';
import { LuminescenceSwatch } from './luminescence-swatch.tsx';
import { AS_MEASURED, togetherOf, type TogetherChoice } from './together-choice.ts';
import { needsPath, valuesFor, type ShownValues } from './values-choice.ts';
import { OverlayChoice, overlayCandidates, ownName, spectrumLabel } from './overlay-choice.tsx';
import { ParametersForm } from './parameters-form.tsx';
import { PeaksTable } from './peaks-table.tsx';
import { diamondHeight, drawnCurves } from './drawn-curves.ts';
import { isLightUnit, shownUnit, wholeRange, type BaselineMode, type CurveChoice, type CurveMode, type LoadedCurves } from './prepare-curves.ts';
import { ReferenceChoice } from './reference-choice.tsx';
import { referenceChoices, referenceLines } from './reference-choices.ts';
import { SpectrumPanels, type Panel } from './spectrum-panels.tsx';
import { ALL_SHOWN, SpectrumPlot, type Shown } from './spectrum-plot.tsx';
import type { Range } from './view-range.ts';
import './spectrum.css';

const ROOM_TEMPERATURE_K = 295;
const MM_PER_CM = 10;

type Props = { readonly run: RunView; readonly runs: readonly RunView[]; readonly caseNumber: string; readonly stoneLabel: string };

/** The tags that say under what conditions a run was made, as its newest analysis was told. */
function RunTags({ run, told }: { readonly run: RunView; readonly told: AnalysisParameters | undefined }) {
  const { laboratory } = useHouse();
  const laserNm = told?.laserNm ?? run.laserNm;
  const temperatureK = run.temperatureK === null && told === undefined ? null : told?.temperatureK ?? run.temperatureK;
  const tags = [
    laserNm === null ? '' : `laser ${laserNm} nm${run.laserNm !== null && laserNm !== run.laserNm ? ', corrected' : ''}`, temperatureK === null ? '' : `${temperatureK} K`,
    run.integrationMs === null ? '' : `${run.integrationMs} ms`, run.resolution === null ? '' : `resolution ${run.resolution} ${resolutionUnit(run.method)}`, told?.scale ? `scale of ${showShortDay(told.scale.at, laboratory.zone)}` : '', run.instrument ?? '',
  ].filter(Boolean);
  return (
    <span className="spectrum-tags">
      {tags.map((tag) => <span key={tag} className="tag mono-tag" title={tag}>{tag}</span>)}
      {run.instrumentState === 'in-order' ? null : <span className="tag warn">{INSTRUMENT_STATE_WORDS[run.instrumentState]}</span>}
    </span>
  );
}

/** The spectra of one run: the curve with its named lines, and everything that can be asked of it. */
export function SpectrumSection({ run, runs, caseNumber, stoneLabel }: Props) {
  const [chosen, setChosen] = useState<string | null>(null);
  const spectrum = run.spectra.find((s) => s.id === chosen) ?? run.spectra[0];
  const curves = useAsk('spectra.curves', spectrum ? { spectrumId: spectrum.id } : null, { keep: true });
  const heading = (
    <div className="spectrum-name">
      <h2 className="one-line">{METHODS[run.method].name}</h2>
      <RunTags run={run} told={spectrum?.analysis?.result.parameters} />
    </div>
  );
  if (!spectrum) return null;
  const several = run.spectra.length > 1
    ? <Choice label="Spectrum of this run" hideLabel className="spectrum-which" value={spectrum.id} onChange={setChosen} options={run.spectra.map((s, i) => ({ value: s.id, label: `${i + 1} of ${run.spectra.length}: ${ownName(run, s)}` }))} />
    : null;
  if (curves.isError) return <section className="spectrum"><header className="spectrum-head">{heading}{several}</header><Trouble {...curves.error.failure} /></section>;
  if (curves.isPending) return <section className="spectrum"><header className="spectrum-head">{heading}{several}</header><div className="spectrum-plot"><Working what="Reading the curve" /></div></section>;
  if (!isLightUnit(curves.data.xUnit)) {
    return (
      <section className="spectrum"><header className="spectrum-head">{heading}{several}</header>
        <Empty title="This curve has no axis of light"><p>Its file gives pixel numbers or a quantity that can’t be turned into a wavelength. Save it again from the instrument with its wavelength scale, and add that file as a run of its own.</p></Empty>
      </section>
    );
  }
  return <Curve key={spectrum.id} run={run} runs={runs} spectrumId={spectrum.id} curves={curves.data} heading={heading} several={several} caseNumber={caseNumber} stoneLabel={stoneLabel} />;
}

function Curve({ run, runs, spectrumId, curves, heading, several, caseNumber, stoneLabel }: Props & {
  readonly spectrumId: string; readonly curves: LoadedCurves; readonly heading: React.ReactNode; readonly several: React.ReactNode;
}) {
  const spectrum = run.spectra.find((s) => s.id === spectrumId)!;
  const result = spectrum.analysis?.result ?? null;
  const laserNm = result?.parameters.laserNm ?? curves.laserNm;
  const possible = axesFor(curves.xUnit, laserNm ?? undefined);
  const [wantedAxis, setAxis] = useState<FigureAxis | null>(null);
  const axis = wantedAxis !== null && possible.includes(wantedAxis) ? wantedAxis : usualAxis(run.method, possible)!;
  const [wantedMode, setMode] = useState<CurveMode>('processed');
  const mode: CurveMode = curves.smoothed.length === 0 ? 'raw' : wantedMode;
  const [baseline, setBaseline] = useState<BaselineMode>('hidden');
  const [overlays, setOverlays] = useState<readonly string[]>([]);
  const [together, setTogether] = useState<TogetherChoice>(AS_MEASURED);
  const [values, setValues] = useState<ShownValues | null>(null);
  const [pathText, setPathText] = useState(result?.infrared?.pathMm ? result.infrared.pathMm.toFixed(3) : '');
  const [references, setReferences] = useState<ReadonlySet<string>>(new Set());
  const [shown, setShown] = useState<Shown>(ALL_SHOWN);
  const [pointed, setPointed] = useState<string | null>(null);

  const candidates = useMemo(() => overlayCandidates(runs, spectrumId), [runs, spectrumId]);
  const laid = candidates.filter((c) => overlays.includes(c.id));
  const over = useAskAll('spectra.curves', laid.map((c) => ({ spectrumId: c.id })));
  const loaded = over.map((query) => query.data);
  const pathMm = readNumber(pathText);
  const choice: CurveChoice = useMemo(() => ({ axis, mode, baseline, values, pathCm: pathMm !== undefined && pathMm > 0 ? pathMm / MM_PER_CM : undefined }), [axis, mode, baseline, values, pathMm]);
  const mustScale = loaded.some((other) => other !== undefined && shownUnit(other, choice) !== shownUnit(curves, choice));

  const label = spectrumLabel(run, spectrum);
  const { curves: drawn, yUnit, yLabel, remarks } = useMemo(
    () => {
      const read = laid.flatMap((c, i) => (loaded[i] ? [{ id: c.id, label: c.label, curves: loaded[i], diamondHeight: diamondHeight(c.spectrum) }] : []));
      return drawnCurves([{ label, curves, diamondHeight: diamondHeight(spectrum) }, ...read], choice, togetherOf(together, mustScale, read.map((c) => c.id)));
    },
    // The list of loaded curves is new on every render; its members are not.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [curves, label, spectrum, choice, overlays, together, mustScale, ...loaded],
  );
  const whole: Range = wholeRange(drawn) ?? [0, 1];
  const temperatureK = result?.parameters.temperatureK ?? run.temperatureK ?? ROOM_TEMPERATURE_K;
  const choices = useMemo(() => referenceChoices(temperatureK), [temperatureK]);
  const lines = useMemo(() => referenceLines(choices, references), [choices, references]);

  const figure = useCallback((part: Shown, columns: number): FigureModel => {
    const model = spectrumFigure({
      curves: drawn, axis, yUnit, columns: columnsFor(columns, drawn.length), lines, centreLabel: lineLabel, peaks: result?.peaks ?? [], diamondRaman: result?.diamondRaman ?? null,
      ...(laserNm === null ? {} : { laserNm }), ...(part.x === null ? {} : { xRange: part.x }),
    });
    return { ...model, ...(part.y === null ? {} : { yRange: [part.y[0], part.y[1]] }), ...(yLabel === null ? {} : { yLabel }) };
  }, [drawn, axis, yUnit, yLabel, lines, result, laserNm]);

  const picture = useRef<{ model: FigureModel; width: number; height: number } | null>(null);
  const onLaidOut = useCallback((model: FigureModel, size: { width: number; height: number }) => { picture.current = { model, ...size }; }, []);
  const chooseAxis = (next: FigureAxis) => { setAxis(next); setShown(ALL_SHOWN); };
  const showPeak = (peak: PeakResult) => {
    if (!isLightUnit(peak.unit)) return;
    const on = (at: number): number => convertPosition(at, peak.unit as Parameters<typeof convertPosition>[1], axis, laserNm === null ? {} : { laserNm });
    const reach = Math.max(peak.fwhm * 12, Math.abs(peak.position) * 0.004);
    const ends = [on(peak.position - reach), on(peak.position + reach)].filter(Number.isFinite);
    if (ends.length === 2) setShown({ x: [Math.max(whole[0], Math.min(...ends)), Math.min(whole[1], Math.max(...ends))], y: null });
  };

  const method = analysableMethod.safeParse(run.method);
  const parameters = result?.parameters ?? (method.success ? analysisParameters.parse({ method: method.data, laserNm: laserNm ?? undefined }) : null);
  const named = `${caseNumber} ${stoneLabel} ${run.number}`;
  const panels: readonly Panel[] = [
    ...(result ? [{ key: 'peaks', name: 'Lines found', count: result.peaks.length, body: <>{result.luminescenceColour ? <LuminescenceSwatch colour={result.luminescenceColour} /> : null}<PeaksTable peaks={result.peaks} onShow={showPeak} /></> }] : []),
    { key: 'overlay', name: 'Lay over', ...(laid.length > 0 ? { count: laid.length } : {}), body: <OverlayChoice candidates={candidates} chosen={overlays} onChosen={setOverlays} onPointed={setPointed} together={together} mustScale={mustScale} axis={axis} onTogether={setTogether} /> },
    { key: 'references', name: 'Reference positions', ...(references.size > 0 ? { count: references.size } : {}), body: <ReferenceChoice choices={choices} chosen={references} onChosen={setReferences} hasLaser={laserNm !== null} /> },
    ...(parameters ? [{ key: 'parameters', name: 'Parameters', body: <ParametersForm key={spectrum.analysis?.id ?? 'none'} spectrum={spectrum} parameters={parameters} /> }] : []),
    { key: 'export', name: 'Export', body: <ExportPanel picture={picture} name={named} title={`${named}, ${METHODS[run.method].name}`} curves={curves} shown={{ curves: drawn, axis, yUnit, yLabel }} run={run} spectrum={spectrum} /> },
  ];
  const main = drawn[0]!;
  const possibleValues = valuesFor(curves.yUnit);
  return (
    <section className="spectrum" aria-label="Spectrum">
      <header className="spectrum-head">
        {heading}{several}
        <div className="spectrum-switches">
          {possibleValues.length > 1 ? <Choice<ShownValues> label="Values" hideLabel className="spectrum-values" value={possibleValues.some((v) => v.value === values) ? values! : possibleValues.find((v) => v.value === curves.yUnit)!.value} onChange={(to) => { setValues(to); setShown(ALL_SHOWN); }} options={possibleValues} /> : null}
          <Segmented<FigureAxis> label="Axis" value={axis} onChange={chooseAxis} options={FIGURE_AXES.map((a) => ({ value: a, label: AXIS_WORDS[a], disabled: !possible.includes(a) }))} />
          <Segmented<CurveMode> label="Curve" value={mode} onChange={setMode} options={[{ value: 'raw', label: 'raw' }, { value: 'processed', label: 'processed', disabled: curves.smoothed.length === 0 }]} />
        </div>
      </header>
      <SpectrumPlot figure={figure} whole={whole} shown={shown} onShown={setShown} laserNm={laserNm} read={main} onLaidOut={onLaidOut} pointed={pointed} onPointed={setPointed}
        label={`${METHODS[run.method].name}, ${AXIS_STYLE[axis].label}, ${result ? `${result.peaks.length} lines found` : 'not analysed'}`} />
      <div className="spectrum-says">
        {(run.method === 'raman' || run.method === 'photoluminescence') && (result !== null || laserNm === null) ? <p className={result?.diamondRaman?.state === 'present' ? 'diamond-present' : 'second'}>{diamondSentence(result?.diamondRaman ?? null, laserNm)}</p> : null}
        {result?.warnings.map((warning) => <p key={warning.code + warning.message} className="warn">{warning.message}</p>)}
        {spectrum.analysis === null ? <p className="warn">This curve was not analysed. Look at the run’s remarks below, correct the parameters and analyse again.</p> : null}
        {values !== null && needsPath(curves.yUnit, values) ? (
          <div className="panel-row"><Field label="Light path in the stone" mono suffix="mm" className="spectrum-path" value={pathText} onChange={setPathText} error={choice.pathCm === undefined ? 'Measure the path and write it, for instance 2.35.' : undefined} />
            {result?.infrared?.pathMm ? <span className="quiet">{result.infrared.pathMm.toFixed(2)} mm by the stone’s own two-phonon absorption.</span> : null}</div>
        ) : null}
        {remarks.map((sentence) => <p key={sentence} className="warn">{sentence}</p>)}
        {over.some((query) => query.isError) ? <p className="warn">A spectrum that should lie over this one could not be read.</p> : null}
      </div>
      <div className="spectrum-foot">
        <SpectrumPanels panels={panels} first={null} />
        {curves.baseline.length > 0 ? (
          <div className="spectrum-baseline"><span className="label">Baseline</span>
            <Segmented<BaselineMode> label="Baseline" value={baseline} onChange={setBaseline} options={[{ value: 'hidden', label: 'hidden' }, { value: 'drawn', label: 'drawn' }, { value: 'subtracted', label: 'taken off' }]} /></div>
        ) : null}
      </div>
    </section>
  );
}
