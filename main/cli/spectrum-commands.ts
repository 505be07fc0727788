import { Option, type Command } from 'commander';
import { ANALYSABLE, analysisParameters, type AnalysableMethod } from '../../app/spectra/analysis.ts';
import { BASELINES, type BaselineKind } from '../../app/spectra/baseline-of.ts';
import { STATABLE_X_UNITS, Y_UNITS, type StatableXUnit, type YUnit } from '../../app/spectra/spectrum.ts';
import { runRead } from './commands/read.ts';
import { EXAMPLES } from './examples.ts';
import type { CliIo, ExitCode } from './io.ts';
import { numberBetween, wholeBetween } from './option-values.ts';

type UnitOptions = { readonly xUnit?: StatableXUnit; readonly yUnit?: YUnit; readonly json?: boolean };
type AnalyseOptions = UnitOptions & {
  readonly method: AnalysableMethod; readonly laserNm?: number; readonly temperatureK?: number; readonly resolution?: number; readonly calibrationErrorNm?: number;
  readonly baseline?: BaselineKind; readonly twoPhononCoefficient?: number; readonly residenceGa?: number; readonly workers?: number;
};

const STATABLE_Y_UNITS = Y_UNITS.filter((unit) => unit !== 'other' && unit !== 'unstated');

const xUnit = () => new Option('--x-unit <unit>', 'unit of the axis, used where the file does not say it').choices(STATABLE_X_UNITS);
const yUnit = () => new Option('--y-unit <unit>', 'unit of the ordinates, used where the file does not say it').choices(STATABLE_Y_UNITS);

export const jsonOption = () => new Option('--json', 'print JSON instead of sentences');

/** `read` and `analyse`: need no casebook. */
export function addSpectrumCommands(program: Command, io: CliIo, finish: (code: ExitCode) => void): void {
  program.command('read').description('say what is in instrument files (JCAMP-DX, delimited text, SPC)')
    .argument('<file...>', 'files, folders, or - for standard input')
    .addOption(xUnit()).addOption(yUnit()).addOption(jsonOption()).addHelpText('after', EXAMPLES.read)
    .action(async (files: string[], options: UnitOptions) => {
      finish(await runRead({ files, stated: stated(options), json: options.json ?? false }, io));
    });

  program.command('analyse').alias('analyze').description('find the peaks of spectra, name their centres and say what follows')
    .argument('<file...>', 'files, folders, or - for standard input')
    .addOption(new Option('--method <method>', 'what was measured').choices(ANALYSABLE).makeOptionMandatory())
    .addOption(new Option('--laser-nm <n>', 'laser wavelength in air, nm').argParser(numberBetween(200, 1100, 'nanometres')))
    .addOption(new Option('--temperature-k <n>', 'temperature of the stone, kelvin (295 unless stated)').argParser(numberBetween(4, 400, 'kelvin')))
    .addOption(new Option('--resolution <n>', 'resolution of the instrument, full width at half maximum, in nm or cm-1').argParser(numberBetween(0.0001, 100, 'in the unit of the axis')))
    .addOption(new Option('--calibration-error-nm <n>', 'how far the wavelength scale may be off, nm (0.1 unless stated)').argParser(numberBetween(0, 5, 'nanometres')))
    .addOption(new Option('--baseline <way>', 'way to the baseline (under-lines unless stated)').choices(BASELINES))
    .addOption(new Option('--two-phonon-coefficient <n>', 'infrared: absorption of the diamond lattice near 1992 cm-1, in cm-1 (12 unless stated)').argParser(numberBetween(10, 14, 'cm-1')))
    .addOption(new Option('--residence-ga <n>', 'infrared: time at depth for the model temperature, billions of years (3 unless stated)').argParser(numberBetween(0.001, 4.5, 'billions of years')))
    .addOption(new Option('--workers <n>', 'threads that share the files (1 unless stated)').argParser(wholeBetween(1, 64, 'threads')))
    .addOption(xUnit()).addOption(yUnit()).addOption(jsonOption()).addHelpText('after', EXAMPLES.analyse)
    .action(async (files: string[], options: AnalyseOptions) => {
      const { method, laserNm, temperatureK, resolution, calibrationErrorNm, baseline, twoPhononCoefficient, residenceGa } = options;
      const parameters = analysisParameters.parse({ method, laserNm, temperatureK, resolution, calibrationErrorNm, baseline, twoPhononCoefficient, residenceGa });
      const { runAnalyse } = await import('./commands/analyse.ts');
      finish(await runAnalyse({ files, stated: stated(options), parameters, json: options.json ?? false, workers: options.workers ?? 1 }, io));
    });
}

function stated({ xUnit: x, yUnit: y }: UnitOptions) {
  return { ...(x === undefined ? {} : { xUnit: x }), ...(y === undefined ? {} : { yUnit: y }) };
}
