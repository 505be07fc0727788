import { createRequire } from 'node:module';
import { join } from 'node:path';
import type sharpType from 'sharp';

type Sharp = typeof sharpType;

/** Where packages are looked for: beside the bundle, or in the project when it runs from its sources. */
const load = createRequire(join(typeof __dirname === 'string' ? __dirname : process.cwd(), 'packages.cjs'));

/** The packages with a library of the machine's own kind, which the decoder would prefer. */
const NATIVE = ['', 'musl'].map((libc) => `@img/sharp-${process.platform}${libc}-${process.arch}/sharp.node`);

let loaded: Sharp | null = null;

/** Tells the module loader that a package brings nothing; one that is not installed needs no telling. */
function hideNative(name: string): void {
  try {
    const file = load.resolve(name);
    load.cache[file] ??= { id: file, filename: file, loaded: true, exports: null, children: [], paths: [], path: file, parent: null, isPreloading: false, require: load };
  } catch { /* not installed: the decoder will not find it either */ }
}

/**
 * The picture decoder, always in its WebAssembly form: the same numbers on every machine, and on Linux the native one
 * meets a second copy of GLib inside Electron and complains at every call. Slower by a factor of three, measured.
 */
export function loadSharp(): Sharp {
  if (loaded !== null) return loaded;
  NATIVE.forEach(hideNative);
  loaded = load('sharp') as Sharp;
  // Photographs are read once; kept results would only hold memory.
  loaded.cache(false);
  loaded.concurrency(1);
  return loaded;
}
