import { useMemo } from 'react';
import type { LotView } from '../../app/contract/lots.ts';
import { drawSample } from '../../app/lots/draw-sample.ts';
import type { PlanContent } from '../../app/lots/lot-record.ts';
import { aimSentence, drawnSentence } from '../../app/lots/statement-words.ts';
import { Button } from '../look/button.tsx';
import { saveFile } from '../look/save-file.ts';

/** Numbers shown at once; the file holds all. */
const SHOWN = 600;

/** The plan that holds, with the list of stones it draws. */
export function DrawnList({ lot, plan }: { readonly lot: LotView; readonly plan: PlanContent }) {
  const list = useMemo(() => (plan.seed === null ? [] : drawSample(plan.lot, plan.size, plan.seed)), [plan]);
  const save = () => { saveFile(`${lot.caseNumber}-${lot.label}-list.txt`, 'text/plain', `${drawnSentence(plan)}\r\n${list.join('\r\n')}\r\n`); };
  return (
    <section className="section lot-drawn" aria-label="The plan that holds">
      <div className="row gap12"><h2 className="grow">The plan that holds</h2>{list.length > 0 ? <Button onPress={save}>Save the list</Button> : null}</div>
      <p>{aimSentence(plan)} {drawnSentence(plan)}</p>
      {plan.method === '' ? null : <p>Each stone is tested by: {plan.method}</p>}
      <p className="second">{plan.reason} <span className="quiet">{lot.plan?.by}</span></p>
      {list.length > 0 ? <p className="mono lot-drawn-list" aria-label="Stones to test">{list.slice(0, SHOWN).join('  ')}{list.length > SHOWN ? `  … and ${list.length - SHOWN} more` : ''}</p> : null}
    </section>
  );
}
