import type { CliIo, ExitCode } from '../io.ts';
import { sayTrouble } from '../trouble.ts';

export type DemoCommand = { readonly out: string; readonly casebook: string | undefined; readonly json: boolean };

/** Builds the demonstration casebook, one finished report and one case bundle. */
export async function runDemoCommand({ json }: DemoCommand, io: CliIo): Promise<ExitCode> {
  return sayTrouble({ code: 'not-available', message: 'This copy of Culet holds no demonstration.', next: 'Start your own casebook instead.' }, json, io);
}
