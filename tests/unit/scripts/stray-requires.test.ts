import { expect, test } from 'vitest';
import { strayRequires } from '../../../scripts/lib/bundle/stray-requires.mjs';

test('names what a sandboxed preload could not load, each once', () => {
  const code = 'let e = require("electron"); const fs = require(\'node:fs\'); const z = require("./chunk-1.cjs"); require("node:fs");';
  expect(strayRequires(code, ['electron'])).toEqual(['./chunk-1.cjs', 'node:fs']);
});

test('is content with what is allowed', () => {
  expect(strayRequires('const { ipcRenderer } = require("electron");', ['electron'])).toEqual([]);
});
