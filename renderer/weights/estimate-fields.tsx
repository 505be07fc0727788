import { useState } from 'react';
import type { StoneSummary } from '../../app/contract/cases.ts';
import type { WeightEstimateView } from '../../app/contract/lots.ts';
import { CUT_WORDS, CUTS, FORMULAS, GIRDLE_WORDS, GIRDLES, type Cut, type Girdle } from '../../app/weights/cuts.ts';
import { estimateText } from '../../app/weights/estimate-text.ts';
import { DEPTH_WAYS, DEPTH_WORDS, estimateWeight, weightMeasures, type DepthWay } from '../../app/weights/estimate-weight.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { Choice } from '../look/choice.tsx';
import { Trouble } from '../look/empty.tsx';
import { Field } from '../look/field.tsx';
import { useNotes } from '../look/notes.tsx';
import { readNumber } from '../look/read-number.ts';
import { useChange } from '../queries.ts';

/** The cut that a stone's shape names, else round. */
const cutOf = (shape: string): Cut => CUTS.find((cut) => shape.toLowerCase().includes(cut)) ?? 'round';

/** Estimates a mounted stone's weight from its measures; kept by its own button, as an estimate. */
export function EstimateFields({ stone, estimate, closedBack }: { readonly stone: StoneSummary; readonly estimate: WeightEstimateView | null; readonly closedBack: boolean }) {
  const { laboratory } = useHouse();
  const before = estimate?.measures;
  const [cut, setCut] = useState<Cut>(before?.cut ?? cutOf(stone.shape));
  const [length, setLength] = useState(String(before?.length ?? ''));
  const [width, setWidth] = useState(String(before?.width ?? ''));
  const [depth, setDepth] = useState(String(before?.depth ?? ''));
  const [depthWay, setDepthWay] = useState<DepthWay>(before?.depthWay ?? (closedBack ? 'closed-back' : 'measured'));
  const [girdle, setGirdle] = useState<Girdle>(before?.girdle ?? 'thin-to-medium');
  const [shape, setShape] = useState(String(before?.shapePercent ?? 0));
  const [asked, setAsked] = useState(false);
  const keep = useChange('weights.estimate');
  const notes = useNotes();
  const parsed = weightMeasures.safeParse({ cut, length: readNumber(length), width: readNumber(width), depth: readNumber(depth), depthWay, girdle, shapePercent: readNumber(shape) ?? 0 });
  const faults = parsed.success || !asked ? {} : Object.fromEntries(parsed.error.issues.map((issue) => [String(issue.path[0]), issue.message]));
  const now = parsed.success ? estimateWeight(parsed.data, laboratory.settings.readingMm) : null;
  const submit = () => {
    setAsked(true);
    if (parsed.success) keep.mutate({ stoneId: stone.id, measures: parsed.data }, { onSuccess: (kept) => { notes.say(`Estimate of ${stone.label} kept: ${estimateText(kept)}.`); } });
  };
  return (
    <section className="estimate" aria-label="Estimated weight" data-kept-apart>
      <p className="label">Weight, estimated from its measures</p>
      <div className="fields-four">
        <Choice<Cut> label="Cut" value={cut} onChange={setCut} options={CUTS.map((value) => ({ value, label: CUT_WORDS[value] }))} />
        <Field label="Length" mono suffix="mm" value={length} onChange={setLength} error={faults['length']} />
        <Field label="Width" mono suffix="mm" value={width} onChange={setWidth} error={faults['width']} />
        <Field label="Depth" mono suffix="mm" value={depth} onChange={setDepth} error={faults['depth']} />
        <Choice<DepthWay> label="Depth was" value={depthWay} onChange={setDepthWay} options={DEPTH_WAYS.map((value) => ({ value, label: DEPTH_WORDS[value] }))} />
        <Choice<Girdle> label="Girdle" value={girdle} onChange={setGirdle} options={GIRDLES.map((value) => ({ value, label: GIRDLE_WORDS[value] }))} />
        <Field label="Shape" mono suffix="%" value={shape} onChange={setShape} error={faults['shapePercent']} />
        <div className="estimate-keep"><Button isPending={keep.isPending} onPress={submit}>Keep estimate</Button></div>
      </div>
      <p role="status">{now ? <><span className="mono">{estimateText(now)}</span> <span className="quiet">(k = 2)</span></> : <span className="quiet">Write length, width and depth: the estimate follows.</span>}{estimate ? <span className="quiet"> · kept: {estimateText(estimate)}, {estimate.by}</span> : null}</p>
      <p className="quiet">An estimate for diamond, never a weighing. {FORMULAS[cut].source === 'compared' ? 'Its factor is in common print for appraisers.' : 'Its factor is from memory.'} The error holds one reading of {laboratory.settings.readingMm} mm, the cut’s own spread and how the depth was found.</p>
      {keep.error ? <Trouble {...keep.error.failure} /> : null}
    </section>
  );
}
