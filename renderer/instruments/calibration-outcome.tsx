import { calibrationWords, type ScaleUse } from '../../app/calibration/calibration-words.ts';
import { UNIT_WORDS } from '../../app/calibration/standard.ts';
import type { CalibrationTrial } from '../../app/contract/calibration.ts';
import { ResidualPlot } from './residual-plot.tsx';

const DECIMALS = { nm: 3, 'cm-1': 2, 'raman-shift': 2 } as const;
/** With its sign, and no sign where nothing is left to sign. */
const signed = (value: number, decimals: number): string => { const size = Math.abs(value).toFixed(decimals); return /[1-9]/.test(size) ? `${value < 0 ? '−' : '+'}${size}` : size; };

/** What a lamp's curve says about the scale: in words, as a picture, line by line. */
export function CalibrationOutcome({ trial, use }: { readonly trial: CalibrationTrial; readonly use: ScaleUse }) {
  const { fit, unassigned, warnings } = trial;
  const decimals = DECIMALS[fit.unit];
  return (
    <section className="calibration-outcome" aria-label="What came out">
      <p>{calibrationWords(fit, use)}</p>
      {unassigned.length > 0 ? <p className="quiet">{unassigned.length === 1 ? 'One line in the curve belongs' : `${unassigned.length} lines in the curve belong`} to nothing in the table and {unassigned.length === 1 ? 'was' : 'were'} not used.</p> : null}
      {warnings.map((warning) => <p key={warning.message} className="quiet">{warning.message}</p>)}
      <ResidualPlot fit={fit} />
      <p className="quiet">Residual of each line, {UNIT_WORDS[fit.unit]}. The band holds corrected positions in 95 of 100 cases.</p>
      <table className="calibration-lines">
        <thead><tr><th className="to-right">Line, {UNIT_WORDS[fit.unit]}</th><th className="to-right">Seen at</th><th className="to-right">Off by</th><th className="to-right">Residual</th><th /></tr></thead>
        <tbody>
          {fit.lines.map((line) => (
            <tr key={line.measured} className={line.used ? '' : 'quiet'}>
              <td className="mono to-right">{line.reference.toFixed(decimals)}</td>
              <td className="mono to-right">{line.measured.toFixed(decimals)} <span className="quiet">± {line.standardError.toFixed(decimals)}</span></td>
              <td className="mono to-right">{signed(-line.deviation, decimals)}</td>
              <td className="mono to-right">{signed(line.residual, decimals)}</td>
              <td>{line.used ? '' : 'left out: the others contradict it'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
