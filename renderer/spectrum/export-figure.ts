import { drawingToSvg, SVG_FONTS } from '../../app/figure/drawing-to-svg.ts';
import type { FigureModel } from '../../app/figure/figure-model.ts';
import { THEMES } from '../../app/figure/inks.ts';
import { layoutFigure } from '../../app/figure/layout-figure.ts';
import { saveFile } from '../look/save-file.ts';
import { drawingToCanvas } from './drawing-to-canvas.ts';
import { loadFigureFonts, measureText } from './measure-text.ts';

export type Picture = { readonly model: FigureModel; readonly width: number; readonly height: number; readonly name: string; readonly title: string };

/** Dots for each px of a saved picture: sharp at the width of a page. */
const PNG_SCALE = 3;

const describe = (model: FigureModel): string =>
  [`${model.curves.filter((c) => c.label !== '').map((c) => c.label).join(', ') || 'One curve'}; ${model.xLabel} from ${model.xRange[0].toFixed(1)} to ${model.xRange[1].toFixed(1)}; ${model.yLabel}.`,
    model.lines.length > 0 ? `Named lines: ${model.lines.map((line) => `${line.name} ${line.position}`.trim()).join(', ')}.` : ''].join(' ').trim();

/** Saves the picture as it stands, as lines and text on white. */
export function saveSvg({ model, width, height, name, title }: Picture): void {
  const { drawing } = layoutFigure(model, { width, height, measureText });
  saveFile(`${name}.svg`, 'image/svg+xml', drawingToSvg(drawing, { theme: THEMES.paper, fonts: SVG_FONTS, title, description: describe(model), background: true }));
}

/** Saves the picture as it stands, as dots on white. */
export async function savePng({ model, width, height, name }: Picture): Promise<void> {
  await loadFigureFonts();
  const { drawing } = layoutFigure(model, { width, height, measureText });
  const canvas = drawingToCanvas(drawing, THEMES.paper, PNG_SCALE);
  const blob = await new Promise<Blob | null>((resolve) => { canvas.toBlob(resolve, 'image/png'); });
  if (blob === null) throw new Error('the picture could not be made');
  saveFile(`${name}.png`, 'image/png', blob);
}
