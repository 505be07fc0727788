import { parentPort, workerData } from 'node:worker_threads';
import { appModule } from './app-module.mjs';

const { runPart } = await appModule('run-part.ts');
parentPort?.postMessage(runPart(workerData));
