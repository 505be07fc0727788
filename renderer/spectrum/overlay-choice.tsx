import type { RunView, SpectrumView } from '../../app/contract/work.ts';
import { AXIS_STYLE } from '../../app/figure/figure-axes.ts';
import type { FigureAxis } from '../../app/figure/figure-model.ts';
import type { Combination } from '../../app/spectra/combine-curves.ts';
import { Check, Choice } from '../look/choice.tsx';
import { Field } from '../look/field.tsx';
import { shortMethod } from '../runs/method-words.ts';
import { SCALES, SCALE_WORDS, type Scale } from './drawn-curves.ts';
import type { TogetherChoice } from './together-choice.ts';
import { isLightUnit } from './prepare-curves.ts';

/** A spectrum that can be laid over another, with the name it gets in the legend. */
export type OverlayCandidate = { readonly id: string; readonly label: string; readonly method: RunView['method']; readonly spectrum: SpectrumView };

/** What tells the curves of one run apart: their titles, else their files, else their place. */
export function ownName(run: RunView, spectrum: SpectrumView): string {
  const distinct = (nameOf: (s: SpectrumView) => string): boolean => new Set(run.spectra.map(nameOf)).size === run.spectra.length && nameOf(spectrum) !== '';
  if (distinct((s) => s.title)) return spectrum.title;
  return distinct((s) => s.fileName) ? spectrum.fileName : `curve ${run.spectra.indexOf(spectrum) + 1}`;
}

/** How a spectrum is called in a legend: its run, and its own name where the run has several. */
export function spectrumLabel(run: RunView, spectrum: SpectrumView): string {
  return `${run.number} ${run.spectra.length > 1 ? ownName(run, spectrum) : shortMethod(run.method)}`;
}

/** All spectra of the stone that have an axis of light, except the one that is shown. */
export const overlayCandidates = (runs: readonly RunView[], shownId: string): OverlayCandidate[] =>
  runs.flatMap((run) => run.spectra.filter((s) => s.id !== shownId && isLightUnit(s.xUnit)).map((spectrum) => ({ id: spectrum.id, label: spectrumLabel(run, spectrum), method: run.method, spectrum })));

/** Which other spectra of this stone are laid over this one. */
export function OverlayChoice(p: {
  readonly candidates: readonly OverlayCandidate[]; readonly chosen: readonly string[]; readonly onChosen: (ids: readonly string[]) => void;
  readonly together: TogetherChoice; /** The ordinates have different units. */ readonly mustScale: boolean; readonly axis: FigureAxis; readonly onTogether: (choice: TogetherChoice) => void;
  /** The label of the curve whose name is under the pointer or the focus. */
  readonly onPointed: (label: string | null) => void;
}) {
  if (p.candidates.length === 0) return <p className="quiet panel-empty">This stone has no other spectrum yet. Spectra of further runs can be laid over this one.</p>;
  const { together } = p;
  const laid = p.candidates.filter((c) => p.chosen.includes(c.id));
  const toggle = (id: string, on: boolean) => { p.onChosen(on ? [...p.chosen, id] : p.chosen.filter((other) => other !== id)); };
  return (
    <div className="panel-body">
      <div className="panel-row">
        <Choice<Scale> label="Scale of each curve" className="overlay-choice" value={p.mustScale && together.scale === 'measured' ? 'range' : together.scale} disabled={laid.length === 0} onChange={(scale) => { p.onTogether({ ...together, scale }); }}
          options={SCALES.map((scale) => ({ value: scale, label: SCALE_WORDS[scale], disabled: scale === 'measured' && p.mustScale }))} />
        {together.scale === 'position' ? <Field label="Position" mono className="overlay-position" suffix={AXIS_STYLE[p.axis].unit} value={together.atText} onChange={(atText) => { p.onTogether({ ...together, atText }); }} /> : null}
        <Choice<Combination | 'none'> label="Show" className="overlay-choice" value={together.combine ?? 'none'} disabled={laid.length === 0} onChange={(how) => { p.onTogether({ ...together, combine: how === 'none' ? null : how }); }}
          options={[{ value: 'none', label: 'the curves over one another' }, { value: 'difference', label: 'this one minus another' }, { value: 'ratio', label: 'this one over another' }]} />
        {together.combine !== null && laid.length > 1 ? <Choice label="The other" className="overlay-choice" value={laid.some((c) => c.id === together.with) ? together.with! : laid[0]!.id} onChange={(id) => { p.onTogether({ ...together, with: id }); }} options={laid.map((c) => ({ value: c.id, label: c.label }))} /> : null}
        <span className="grow" />
        <button type="button" className="word-button" onClick={() => { p.onChosen(p.candidates.map((c) => c.id)); }}>All</button>
        <button type="button" className="word-button" onClick={() => { p.onChosen([]); }}>None</button>
      </div>
      {p.mustScale ? <p className="quiet">The ordinates have different units, so each curve needs a scale of its own.</p> : null}
      {together.combine !== null && laid.length > 0 ? <p className="quiet">Worked out on the points of the coarser curve, over the range that both cover; a finer curve is averaged there.</p> : null}
      <div className="panel-columns">
        {p.candidates.map((c) => (
          <span key={c.id} onPointerEnter={() => { p.onPointed(c.label); }} onPointerLeave={() => { p.onPointed(null); }} onFocus={() => { p.onPointed(c.label); }} onBlur={() => { p.onPointed(null); }}>
            <Check label={c.label} checked={p.chosen.includes(c.id)} onChange={(on) => { toggle(c.id, on); }} />
          </span>
        ))}
      </div>
    </div>
  );
}
