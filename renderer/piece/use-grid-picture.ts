import { useEffect, useMemo, useState } from 'react';
import { drawingToSvg, SVG_FONTS } from '../../app/figure/drawing-to-svg.ts';
import { THEMES } from '../../app/figure/inks.ts';
import { gridDrawing } from '../../app/piece/grid-drawing.ts';
import type { MapGround } from '../../app/piece/mark.ts';
import { useTheme } from '../look/theme.ts';
import type { Picture } from './use-picture.ts';

/** Width of the drawn grid, in its own points. */
const GRID_WIDTH = 1200;

/** A grid as a picture to place marks on, in the colours of the window; null for any other ground. */
export function useGridPicture(ground: MapGround): Picture | null {
  const theme = useTheme();
  const key = ground.kind === 'grid' ? `${ground.columns} ${ground.rows}` : '';
  const drawn = useMemo(() => {
    if (key === '') return null;
    const [columns, rows] = key.split(' ').map(Number) as [number, number];
    const drawing = gridDrawing({ kind: 'grid', columns, rows }, GRID_WIDTH);
    return { svg: drawingToSvg(drawing, { theme: THEMES[theme], fonts: SVG_FONTS, title: 'grid', description: `${columns} columns, ${rows} rows`, background: true }), width: drawing.width, height: drawing.height };
  }, [key, theme]);
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    if (drawn === null) { setUrl(null); return undefined; }
    const made = URL.createObjectURL(new Blob([drawn.svg], { type: 'image/svg+xml' }));
    setUrl(made);
    return () => { URL.revokeObjectURL(made); };
  }, [drawn]);
  return drawn !== null && url !== null ? { url, width: drawn.width, height: drawn.height } : null;
}
