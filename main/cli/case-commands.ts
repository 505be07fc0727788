import { Option, type Command } from 'commander';
import { GRAINS } from '../../app/history/steps.ts';
import { EXAMPLES } from './examples.ts';
import type { CliIo, ExitCode } from './io.ts';
import { casebookOption, dataFolderOf, dataOption } from './program-commands.ts';
import { jsonOption } from './spectrum-commands.ts';

type SignIn = { readonly person?: string; readonly passwordStdin?: boolean };
type ImportOptions = SignIn & { readonly checkedHow?: string; readonly progress?: boolean; readonly casebook?: string; readonly data?: string; readonly json?: boolean };
type CaseOptions = { readonly from?: string; readonly to?: string; readonly out: string; readonly casebook?: string; readonly data?: string; readonly draft?: boolean; readonly key?: string; readonly checkpoint?: string[]; readonly remembered?: string; readonly progress?: boolean; readonly json?: boolean } & SignIn;
type FiguresOptions = { readonly from?: string; readonly to?: string; readonly by: string; readonly csv?: 'over-time' | 'agreement' | 'checks' | 'trials' | 'rates'; readonly casebook?: string; readonly data?: string; readonly json?: boolean };

const personOption = (what: string) => new Option('--person <name>', what);
const passwordOption = () => new Option('--password-stdin', 'read the password from the first line of standard input instead of asking for it');

/** `report`, `bundle`, `figures` and `verify` look into a casebook; `import`, and whoever signs in, change it. Their code is loaded when they run: reading a file needs no database. */
export function addCaseCommands(program: Command, io: CliIo, finish: (code: ExitCode) => void): void {
  program.command('report').description('write the report of a case, as it was last issued, to a PDF')
    .argument('<case>', 'number of the case, for instance C-2026-0001')
    .requiredOption('--out <file>', 'PDF to write')
    .option('--draft', 'what the report would say now, marked as a draft')
    .addOption(casebookOption()).addOption(dataOption()).addOption(jsonOption()).addHelpText('after', EXAMPLES.report)
    .action(async (number: string, { out, casebook, data, draft, json }: CaseOptions) => {
      const { runReport } = await import('./commands/report.ts');
      finish(await runReport({ number, out, casebook, dataFolder: dataFolderOf(data, io), draft: draft ?? false, json: json ?? false }, io));
    });

  program.command('bundle').description('write everything of a case, or of the cases received in a period, to a zip that checks itself')
    .argument('[what]', 'number of the case; with --from and --to a casebook, without it the one last used')
    .option('--from <day>', 'first day on which the cases were received, in the laboratory’s zone, as year-month-day')
    .option('--to <day>', 'last day, counted in')
    .requiredOption('--out <file>', 'zip to write')
    .addOption(personOption('sign the bundle in the name of this person, who gives the password')).addOption(passwordOption())
    .addOption(casebookOption()).addOption(dataOption()).addOption(jsonOption()).addHelpText('after', EXAMPLES.bundle)
    .action(async (what: string | undefined, { from, to, out, person, passwordStdin, casebook, data, json }: CaseOptions) => {
      const { runBundle } = await import('./commands/bundle.ts');
      finish(await runBundle({ what, from, to, out, person, passwordStdin: passwordStdin ?? false, casebook, dataFolder: dataFolderOf(data, io), json: json ?? false }, io));
    });

  program.command('import').description('check a bundle of another laboratory and keep it in a casebook as it came')
    .argument('<bundle>', 'zip that another laboratory wrote')
    .addOption(personOption('manager who takes it in, and gives the password')).addOption(passwordOption())
    .option('--checked-how <text>', 'how it was made sure whose it is, where its key is not known or nobody signed it')
    .option('--progress', 'say on standard error how far it has come, also where that is no terminal')
    .addOption(casebookOption()).addOption(dataOption()).addOption(jsonOption()).addHelpText('after', EXAMPLES.import)
    .action(async (file: string, { person, passwordStdin, checkedHow, progress, casebook, data, json }: ImportOptions) => {
      const { runImport } = await import('./commands/import.ts');
      finish(await runImport({ file, person, passwordStdin: passwordStdin ?? false, checkedHow: (checkedHow ?? '').trim(), progress: progress ?? false, casebook, dataFolder: dataFolderOf(data, io), json: json ?? false }, io));
    });

  program.command('figures').description('count what came, what went and how it ended over time, with exact limits')
    .option('--from <day>', 'first day, yyyy-mm-dd; without it that of the first record that can be counted')
    .option('--to <day>', 'last day; without it today')
    .addOption(new Option('--by <step>', 'steps of time').choices([...GRAINS]).default('month'))
    .addOption(new Option('--csv <table>', 'print one table as comma-separated text').choices(['over-time', 'agreement', 'checks', 'trials', 'rates']))
    .addOption(casebookOption()).addOption(dataOption()).addOption(jsonOption()).addHelpText('after', EXAMPLES.figures)
    .action(async ({ from, to, by, csv, casebook, data, json }: FiguresOptions) => {
      const { runFigures } = await import('./commands/figures.ts');
      finish(await runFigures({ from, to, by, csv, casebook, dataFolder: dataFolderOf(data, io), json: json ?? false }, io));
    });

  program.command('verify').description('check a report (PDF) or a bundle (zip), or recompute the ledgers and digests of a casebook')
    .argument('[file]', 'a report, a bundle, or a casebook; without it the casebook last used')
    .option('--key <file>', 'a report or a bundle: public key of the laboratory that is said to have signed it')
    .option('--checkpoint <file...>', 'a casebook: checkpoints that were kept elsewhere')
    .option('--remembered <file>', 'a casebook: state.json of the data folder in which the program closed it last; taken by itself where the casebook lies beside it')
    .option('--progress', 'a casebook: say on standard error how far it has come, also where that is no terminal')
    .addOption(casebookOption()).addOption(dataOption()).addOption(jsonOption()).addHelpText('after', EXAMPLES.verify)
    .action(async (file: string | undefined, { key, checkpoint, remembered, progress, casebook, data, json }: CaseOptions) => {
      const common = { dataFolder: dataFolderOf(data, io), json: json ?? false };
      const { isBundle, runVerifyBundle } = await import('./commands/verify-bundle.ts');
      if (file !== undefined && isBundle(file, io.workingFolder)) {
        finish(await runVerifyBundle({ file, key, casebook, ...common }, io));
        return;
      }
      const { isReport, runVerifyReport } = await import('./commands/verify-report.ts');
      if (file !== undefined && (key !== undefined || isReport(file, io.workingFolder))) {
        finish(await runVerifyReport({ file, key, casebook, ...common }, io));
        return;
      }
      const { runVerify } = await import('./commands/verify.ts');
      finish(await runVerify({ casebook: file ?? casebook, checkpoints: checkpoint ?? [], remembered, progress: progress ?? false, ...common }, io));
    });
}
