import type { RefObject } from 'react';
import type { RunView, SpectrumView } from '../../app/contract/work.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { writeDelimited } from '../../app/files/write-delimited.ts';
import { writeJcampDx } from '../../app/files/write-jcamp-dx.ts';
import type { FigureModel } from '../../app/figure/figure-model.ts';
import { useHouse } from '../house/house-context.tsx';
import { Button } from '../look/button.tsx';
import { useNotes } from '../look/notes.tsx';
import { saveFile } from '../look/save-file.ts';
import { exportedAsShown, exportedCurves, type ShownCurves } from './exported-curves.ts';
import { savePng, saveSvg } from './export-figure.ts';
import type { LoadedCurves } from './prepare-curves.ts';

type Props = {
  readonly picture: RefObject<{ readonly model: FigureModel; readonly width: number; readonly height: number } | null>;
  readonly name: string; readonly title: string; readonly curves: LoadedCurves; readonly shown: ShownCurves; readonly run: RunView; readonly spectrum: SpectrumView;
};

/** The kind of data as JCAMP-DX names it. */
const DATA_TYPES: Partial<Record<MethodId, string>> = {
  raman: 'RAMAN SPECTRUM', photoluminescence: 'PHOTOLUMINESCENCE SPECTRUM', absorption: 'UV/VIS SPECTRUM', infrared: 'INFRARED SPECTRUM', 'ultraviolet-transmission': 'UV/VIS SPECTRUM',
};

/** A name that every file system takes. */
const fileName = (name: string): string => name.replace(/[^\p{L}\p{N}.-]+/gu, '-');

/** Takes the figure or its numbers out of the house. */
export function ExportPanel({ picture, name, title, curves, shown, run, spectrum }: Props) {
  const notes = useNotes();
  const { laboratory } = useHouse();
  const file = fileName(name);
  const withPicture = (save: (of: { model: FigureModel; width: number; height: number; name: string; title: string }) => void | Promise<void>) => {
    if (!picture.current) return;
    Promise.resolve(save({ ...picture.current, name: file, title })).catch(() => { notes.complain({ message: 'The picture could not be made.', next: 'Save it as SVG instead.' }); });
  };
  const saveCsv = () => { saveFile(`${file}.csv`, 'text/csv', writeDelimited(exportedCurves(curves))); };
  const saveShown = () => {
    const common = exportedAsShown(shown);
    if (common.ok) saveFile(`${file}-as-shown.csv`, 'text/csv', writeDelimited(common.value));
    else notes.complain({ message: common.error.message, next: 'Or save each curve by itself.' });
  };
  const saveJcamp = () => {
    const [raw] = exportedCurves(curves);
    if (!raw) return;
    saveFile(`${file}.jdx`, 'chemical/x-jcamp-dx', writeJcampDx({ ...raw, title }, {
      origin: 'Culet', owner: laboratory.name, dataType: DATA_TYPES[run.method] ?? 'SPECTRUM',
      records: [['$SOURCE FILE', spectrum.fileName], ...(curves.laserNm === null ? [] : [['$LASER WAVELENGTH NM', String(curves.laserNm)] as const])],
    }));
  };
  return (
    <div className="panel-body">
      <div className="panel-row">
        <Button onPress={() => { withPicture(saveSvg); }}>Picture, SVG</Button>
        <Button onPress={() => { withPicture(savePng); }}>Picture, PNG</Button>
        <Button onPress={saveCsv}>Numbers, CSV</Button>
        <Button onPress={saveShown}>Numbers as shown, CSV</Button>
        <Button onPress={saveJcamp}>Numbers, JCAMP-DX</Button>
      </div>
      <p className="quiet">Pictures show what is shown now, on white. CSV holds the curve as read, processed, and its baseline; as shown it holds every curve of the figure, in its units, on one axis: the points of the coarsest curve, over the range that all cover. JCAMP-DX holds the curve as read. The instrument’s own file is in the table of runs, byte for byte.{spectrum.analysis?.result.parameters.scale ? ' Positions are corrected by the instrument’s calibration, in pictures and in numbers.' : ''}</p>
    </div>
  );
}
