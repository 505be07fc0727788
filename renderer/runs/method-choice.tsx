import { useEffect, useRef } from 'react';
import { METHODS, type MethodId } from '../../app/domain/method.ts';
import type { MethodAdvice } from './method-advice.ts';

/** Every test the house knows: what it tells, whether it was done, and why it can't be done here. Arrows move, Enter chooses. */
export function MethodChoice({ advice, wanted, chosen, onChoose }: {
  readonly advice: readonly MethodAdvice[]; readonly wanted: ReadonlySet<MethodId>; readonly chosen: MethodId | null; readonly onChoose: (method: MethodId) => void;
}) {
  const list = useRef<HTMLUListElement>(null);
  // Chosen by a file, not by hand: the focus goes along if it was here.
  useEffect(() => { if (list.current?.contains(document.activeElement)) list.current.querySelector<HTMLElement>('[aria-checked="true"]')?.focus(); }, [chosen]);
  return (
    <ul ref={list} className="method-choice" role="radiogroup" aria-label="Method" onKeyDown={(event) => {
      if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
      event.preventDefault();
      const buttons = [...event.currentTarget.querySelectorAll<HTMLElement>('button:not(:disabled)')];
      const at = buttons.indexOf(document.activeElement as HTMLElement);
      buttons[(at + (event.key === 'ArrowDown' ? 1 : -1) + buttons.length) % buttons.length]?.focus();
    }}>
      {advice.map(({ method, done, impossible }) => (
        <li key={method}>
          <button type="button" role="radio" aria-checked={method === chosen} disabled={impossible !== null} autoFocus={method === chosen} onClick={() => { onChoose(method); }}>
            <span className="method-name">{METHODS[method].name}</span>
            <span className="mono quiet">{done.length > 0 ? done.join(' ') : wanted.has(method) ? 'next' : ''}</span>
            <span className={impossible ? 'method-tells warn' : 'method-tells'}>{impossible ?? METHODS[method].tells}</span>
          </button>
        </li>
      ))}
    </ul>
  );
}
