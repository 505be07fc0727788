import { processIo } from './process-io.ts';
import { runCli } from './run-cli.ts';

/** The database binding ends an older Node with a crash instead of a sentence. */
const LEAST_NODE = 22;

const major = Number(process.versions.node.split('.')[0]);
if (major < LEAST_NODE) {
  process.stderr.write(`Culet's command line needs Node ${LEAST_NODE} or newer; this is ${process.versions.node}. Run it with: npm run culet -- …\n`);
  process.exitCode = 1;
} else {
  void runCli(process.argv.slice(2), processIo()).then((code) => { process.exitCode = code; });
}
