import { useEffect, useRef, useState } from 'react';

/** Space beside a page, CSS pixels. */
const BESIDE = 48;
const WIDEST = 860;

function useWidth() {
  const box = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    if (!box.current) return undefined;
    const watch = new ResizeObserver(([entry]) => { if (entry) setWidth(Math.max(200, Math.min(WIDEST, Math.floor(entry.contentRect.width) - BESIDE))); });
    watch.observe(box.current);
    return () => { watch.disconnect(); };
  }, []);
  return { box, width };
}

/** The pages of the PDF itself, one under the other. The last drawing stays until the next is whole, so nothing jumps while somebody types. */
export function Preview({ pdf, busy, of = 'the draft' }: { readonly pdf: Uint8Array | null; readonly busy: boolean; readonly of?: string }) {
  const { box, width } = useWidth();
  const paper = useRef<HTMLDivElement>(null);
  const [pages, setPages] = useState(0);
  const [drawn, setDrawn] = useState<Uint8Array | null>(null);
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    if (pdf === null || width === 0) return undefined;
    let stopped = false;
    const draw = async () => {
      const { drawPages } = await import('./draw-pages.ts');
      const canvases = await drawPages(pdf, width, () => stopped);
      if (stopped) return;
      canvases.forEach((canvas, index) => { canvas.setAttribute('role', 'img'); canvas.setAttribute('aria-label', `Page ${index + 1} of ${canvases.length}`); });
      paper.current?.replaceChildren(...canvases);
      setPages(canvases.length);
      setDrawn(pdf);
      setTrouble('');
    };
    draw().catch((fault: unknown) => { if (!stopped) setTrouble(fault instanceof Error ? fault.message : String(fault)); });
    return () => { stopped = true; };
  }, [pdf, width]);
  const working = busy || (pdf !== drawn && trouble === '');
  return (
    <div className="preview" ref={box}>
      <p className="preview-line" role="status">{pages === 0 ? '' : <span className="mono">{pages} {pages === 1 ? 'page' : 'pages'}</span>}<span className="quiet">{working ? 'drawing the pages …' : trouble ? '' : 'as they would be printed'}</span></p>
      {trouble ? <p className="warn" role="alert">The pages can’t be shown here ({trouble}). Save the draft as a PDF and read it there.</p> : null}
      {/* The pages can be scrolled with the keys. */}
      <div className="preview-paper" ref={paper} tabIndex={0} role="region" aria-label={`Pages of ${of}`} />
    </div>
  );
}
