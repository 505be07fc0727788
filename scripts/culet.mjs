#!/usr/bin/env node
import { builtCommandLine, callersFolder } from './lib/paths.mjs';
import { prepare, runOnProjectNode } from './lib/prepare.mjs';
import { main } from './lib/say.mjs';

await main(async () => {
  await prepare();
  return (await runOnProjectNode([builtCommandLine, ...process.argv.slice(2)], { cwd: callersFolder() })).code;
});
