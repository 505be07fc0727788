#!/usr/bin/env node
import { existsSync, readdirSync } from 'node:fs';
import { inRoot } from './lib/paths.mjs';
import { prepare, runOnProjectNode } from './lib/prepare.mjs';
import { main, Stop } from './lib/say.mjs';

await main(async () => {
  const [what, ...args] = process.argv.slice(2);
  const benches = readdirSync(inRoot('tests', 'bench'), { withFileTypes: true }).filter((entry) => entry.isDirectory()).map((entry) => entry.name);
  if (what === undefined || !benches.includes(what)) throw new Stop(`Say what to measure: npm run bench -- ${benches.join('|')}`);
  const program = inRoot('tests', 'bench', what, 'bench.ts');
  if (!existsSync(program)) throw new Stop(`${program} is missing.`);
  await prepare();
  return (await runOnProjectNode([program, ...args])).code;
});
