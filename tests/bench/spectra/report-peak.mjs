// JavaScript, not TypeScript: the peak must be the program's own, without a compiler's memory in it.
import { writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

/** Loaded before a program: at its end, writes its peak of resident memory in kilobytes to the file that PEAK_REPORT names. */
const file = process.env['PEAK_REPORT'];
if (isMainThread && file !== undefined) process.on('exit', () => writeFileSync(file, String(process.resourceUsage().maxRSS)));
