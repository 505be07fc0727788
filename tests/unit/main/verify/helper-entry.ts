import { helpInProcess } from '../../../../main/verify/help-in-process.ts';

/** What main/main.ts does when the program was started with the switch, for tests that run from source. */
process.exitCode = await helpInProcess() === 'done' ? 0 : 2;
