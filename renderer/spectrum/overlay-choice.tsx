import type { RunView, SpectrumView } from '../../app/contract/work.ts';
import { Check } from '../look/choice.tsx';
import { shortMethod } from '../runs/method-words.ts';
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
  readonly normalise: boolean; readonly mustNormalise: boolean; readonly onNormalise: (on: boolean) => void;
  /** The label of the curve whose name is under the pointer or the focus. */
  readonly onPointed: (label: string | null) => void;
}) {
  if (p.candidates.length === 0) return <p className="quiet panel-empty">This stone has no other spectrum yet. Spectra of further runs can be laid over this one.</p>;
  const toggle = (id: string, on: boolean) => { p.onChosen(on ? [...p.chosen, id] : p.chosen.filter((other) => other !== id)); };
  return (
    <div className="panel-body">
      <div className="panel-row">
        <Check label="Scale each curve to its own height" checked={p.normalise || p.mustNormalise} disabled={p.mustNormalise} onChange={p.onNormalise} />
        {p.mustNormalise ? <span className="quiet">The ordinates have different units, so each curve is scaled to its own height.</span> : null}
        <span className="grow" />
        <button type="button" className="word-button" onClick={() => { p.onChosen(p.candidates.map((c) => c.id)); }}>All</button>
        <button type="button" className="word-button" onClick={() => { p.onChosen([]); }}>None</button>
      </div>
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
