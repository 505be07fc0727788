#!/usr/bin/env node
import { ensureInstalled } from './lib/install.mjs';
import { inRoot } from './lib/paths.mjs';
import { runOnProjectNode } from './lib/prepare.mjs';
import { main } from './lib/say.mjs';

// The rules need no build: the project's Node reads their TypeScript as it stands.
await main(async () => {
  await ensureInstalled();
  return (await runOnProjectNode([inRoot('scripts', 'lib', 'evaluate', 'main.mjs'), ...process.argv.slice(2)])).code;
});
