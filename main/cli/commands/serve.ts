import { randomBytes } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { createCallsInFlight } from '../../host/calls-in-flight.ts';
import { createFileLog } from '../../host/log.ts';
import { startLoopbackHost, type LoopbackHost } from '../../host/loopback-host.ts';
import { openHouse } from '../../host/open-house.ts';
import { programFolders } from '../../host/program-folders.ts';
import { noSystemStore } from '../../keys/system-store.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { openBrowser } from '../open-browser.ts';

export type ServeCommand = {
  readonly dataFolder: string;
  /** Absolute. */
  readonly casebook: string | undefined;
  readonly port: number;
  readonly open: boolean;
  /** Why the window is served instead of shown, said on the console and in the window. */
  readonly note: string;
};

const SECRET_BYTES = 32;

/** Serves the window on 127.0.0.1 until it is asked to end. */
export async function runServe(command: ServeCommand, io: CliIo): Promise<ExitCode> {
  const ended = io.askedToEnd();
  if (command.note !== '') io.err(`${command.note}\n`);
  mkdirSync(command.dataFolder, { recursive: true });
  const { page, migrations, worker, verifyWorker } = programFolders();
  const log = createFileLog(command.dataFolder, () => new Date(), (line) => { io.err(`${line}\n`); });
  let host: LoopbackHost | null = null;
  const opened = await openHouse({
    dataFolder: command.dataFolder, casebook: command.casebook, host: 'loopback', hostNote: command.note, migrations, worker, verifyHelp: { workerFile: verifyWorker }, log,
    systemStore: noSystemStore('a window in a browser can’t reach the system’s key store'),
    announce: (event) => { host?.announce(event); },
  });
  if (opened.inUse !== null) {
    io.err(`${opened.inUse.message}\n${opened.inUse.next}\n`);
    await opened.close();
    return EXIT.failed;
  }
  const calls = createCallsInFlight(opened.house);
  const started = await startLoopbackHost({ port: command.port, pageFolder: page, calls: Promise.resolve(calls), newSecret: () => randomBytes(SECRET_BYTES).toString('base64url') });
  if (!started.ok) {
    io.err(`${started.error}\n`);
    await opened.close();
    return EXIT.failed;
  }
  host = started.value;
  io.out(`Culet is open at ${host.address}\n`);
  if (command.open) openBrowser(host.address, process.platform);
  await ended;
  await calls.close();
  await host.close();
  await opened.close();
  return EXIT.done;
}
