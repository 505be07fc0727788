import { useEffect, useState } from 'react';
import { wholeTurn, type PictureView } from '../../app/piece/picture-view.ts';
import { Button } from '../look/button.tsx';
import { Field } from '../look/field.tsx';
import { readNumber } from '../look/read-number.ts';

/** What a drag in the picture means. */
export type LookTool = 'shift' | 'crop' | 'scale';

function NumberLine({ label, value, suffix, onTake, fits, says }: {
  readonly label: string; readonly value: number | null; readonly suffix: string; readonly onTake: (value: number) => void; readonly fits: (value: number) => boolean; readonly says: string;
}) {
  const shown = value === null ? '' : String(Number(value.toFixed(2)));
  const [text, setText] = useState(shown);
  useEffect(() => { setText(shown); }, [shown]);
  const number = readNumber(text);
  const wrong = number !== undefined && !fits(number);
  const take = () => { if (number !== undefined && fits(number) && number !== value) onTake(number); };
  return <span onKeyDown={(e) => { if (e.key === 'Enter') take(); }}><Field label={label} mono value={text} suffix={suffix} onChange={setText} onBlur={take} error={wrong ? says : undefined} /></span>;
}

/** Turning, cropping and the scale of a photograph as it is looked at. The record stays as it came. */
export function LookPanel({ view, tool, onView, onTool }: { readonly view: PictureView; readonly tool: LookTool; readonly onView: (view: PictureView) => void; readonly onTool: (tool: LookTool) => void }) {
  const turn = (by: number) => { onView({ ...view, rotation: wholeTurn(view.rotation + by) }); };
  return (
    <div className="look-panel">
      <p className="label">How it is looked at</p>
      <div className="row gap4"><Button aria-label="Turn left" onPress={() => { turn(-90); }}>↺ 90°</Button><Button aria-label="Turn right" onPress={() => { turn(90); }}>↻ 90°</Button></div>
      <NumberLine label="Turn, clockwise" suffix="°" value={view.rotation} fits={(n) => Math.abs(n) <= 180} says="From −180 to 180." onTake={(n) => { onView({ ...view, rotation: wholeTurn(n) }); }} />
      <div className="row gap4 wrap">
        <Button aria-pressed={tool === 'crop'} onPress={() => { onTool(tool === 'crop' ? 'shift' : 'crop'); }}>{tool === 'crop' ? 'Drag the part to keep' : 'Crop'}</Button>
        {view.crop ? <Button kind="quiet" onPress={() => { onView({ ...view, crop: null }); }}>Whole again</Button> : null}
      </div>
      <div className="row gap4 wrap">
        <Button aria-pressed={tool === 'scale'} onPress={() => { onTool(tool === 'scale' ? 'shift' : 'scale'); }}>{tool === 'scale' ? 'Drag along a known length' : 'Set the scale'}</Button>
        {view.scale ? <Button kind="quiet" onPress={() => { onView({ ...view, scale: null }); }}>No scale</Button> : null}
      </div>
      {view.scale ? <NumberLine label="Length of the line" suffix="mm" value={view.scale.millimetres} fits={(n) => n > 0 && n <= 1000} says="More than nothing, at most 1000 mm." onTake={(millimetres) => { onView({ ...view, scale: { ...view.scale!, millimetres } }); }} /> : null}
    </div>
  );
}
