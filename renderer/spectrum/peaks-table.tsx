import { AXIS_STYLE } from '../../app/figure/figure-axes.ts';
import type { FigureAxis } from '../../app/figure/figure-model.ts';
import type { PeakResult } from '../../app/spectra/analysis.ts';
import { opticalCentre } from '../../app/reference/optical-centres.ts';
import { lineLabel } from '../../app/runs/line-label.ts';

const unitWord = (unit: PeakResult['unit']): string => (unit in AXIS_STYLE ? AXIS_STYLE[unit as FigureAxis].unit : unit);
const decimalsOf = (unit: PeakResult['unit']): number => (unit in AXIS_STYLE ? AXIS_STYLE[unit as FigureAxis].decimals + 1 : 2);
const minus = (text: string): string => (/[1-9]/.test(text) ? text.replace('-', '−') : text.replace('-', ''));
/** One digit of an uncertainty tells enough; never zero. */
const uncertainty = (value: number, decimals: number): string => (value >= 10 ** -decimals ? value.toFixed(decimals) : value > 0 ? value.toFixed(Math.min(6, Math.ceil(-Math.log10(value)))) : '0');
const significant = (value: number): string => (Math.abs(value) >= 1000 ? String(Math.round(value)) : minus(value.toPrecision(3)));

/** Name of what a line was matched with, whichever table it is from. */
export function centreName(id: string): string {
  return opticalCentre(id)?.name ?? lineLabel(id)?.name ?? id;
}

function remark(peak: PeakResult): string {
  const may = peak.ambiguousWith.map(centreName).join(' or ');
  if (peak.sidebandOf !== null) return `sideband of ${may || centreName(peak.sidebandOf)}`;
  return may === '' ? '' : `may be ${may}`;
}

/** Every line that was found, named or not. A row shows its place in the figure. */
export function PeaksTable({ peaks, onShow }: { readonly peaks: readonly PeakResult[]; readonly onShow: (peak: PeakResult) => void }) {
  const first = peaks[0];
  if (!first) return <p className="quiet panel-empty">No line stands out of the noise of this curve.</p>;
  return (
    <table className="plain-table peaks">
      <thead><tr><th className="to-right">Position, {unitWord(first.unit)}</th><th className="to-right">Height</th><th className="to-right">FWHM</th><th className="to-right">S/N</th><th>Centre</th><th className="to-right">Offset</th><th>Remarks</th></tr></thead>
      <tbody>
        {peaks.map((peak) => {
          const decimals = decimalsOf(peak.unit);
          return (
            <tr key={`${peak.position}`} tabIndex={0} className="opens" onClick={() => { onShow(peak); }} onKeyDown={(e) => { if (e.key === 'Enter') onShow(peak); }}>
              <td className="mono to-right">{peak.position.toFixed(decimals)}{peak.standardError === null ? null : <span className="quiet"> ± {uncertainty(peak.standardError, decimals)}</span>}</td>
              <td className="mono to-right">{significant(peak.height)}</td>
              <td className="mono to-right">{peak.fwhm.toFixed(decimals)}</td>
              <td className="mono to-right">{peak.snr >= 10 ? Math.round(peak.snr) : peak.snr.toFixed(1)}</td>
              <td>{peak.centre === null ? <span className="quiet">not named</span> : centreName(peak.centre)}</td>
              <td className="mono to-right">{peak.offset === null ? '' : minus(peak.offset.toFixed(decimals))}</td>
              <td className="second one-line" title={remark(peak)}>{remark(peak)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
