#!/usr/bin/env node
import { ensureInstalled } from './lib/install.mjs';
import { main } from './lib/say.mjs';
import { chosenSteps, closingLine, sum } from './lib/test-steps.mjs';

/** @param {number} started milliseconds */
const secondsSince = (started) => `${((Date.now() - started) / 1000).toFixed(1)} s`;

await main(async () => {
  const chosen = chosenSteps(process.argv.slice(2));
  await ensureInstalled();
  const started = Date.now();
  /** @type {import('./lib/test-steps.mjs').Count[]} */
  const counts = [];
  /** @type {string[]} */
  const table = [];
  for (const step of chosen) {
    console.log(`\n== ${step.title}`);
    const stepStarted = Date.now();
    const count = await step.run();
    counts.push(count);
    table.push(`${count.failed === 0 ? 'ok    ' : 'FAILED'}  ${step.title.padEnd(18)} ${closingLine(count)}  (${secondsSince(stepStarted)})`);
    console.log(table.at(-1));
  }
  const total = sum(...counts);
  console.log(`\n${table.join('\n')}\n\nIn all ${secondsSince(started)}`);
  console.log(closingLine(total));
  return total.failed === 0 ? 0 : 1;
});
