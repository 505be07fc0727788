#!/usr/bin/env node
import { ensureInstalled } from './lib/install.mjs';
import { ensureBuilt } from './lib/prepare.mjs';
import { main } from './lib/say.mjs';

await main(async () => {
  await ensureInstalled();
  await ensureBuilt({ evenWhenFresh: true });
  return 0;
});
