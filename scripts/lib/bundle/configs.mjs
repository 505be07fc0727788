import { createRequire } from 'node:module';
import react from '@vitejs/plugin-react';
import { inRoot, root } from '../paths.mjs';
import { pdfkitInBundle } from './pdfkit.mjs';

const manifest = createRequire(import.meta.url)(inRoot('package.json'));

/** What every bundle shares. @type {import('vite').InlineConfig} */
const common = {
  configFile: false,
  logLevel: 'warn',
  mode: 'production',
  define: { __CULET_VERSION__: JSON.stringify(manifest.version) },
};

/** The window. Paths are relative, because two hosts serve it: a protocol of its own and http. @type {import('vite').InlineConfig} */
export const rendererConfig = {
  ...common,
  root: inRoot('renderer'),
  base: './',
  plugins: [react()],
  build: {
    outDir: inRoot('dist', 'renderer'),
    emptyOutDir: true,
    target: 'chrome114',
    sourcemap: true,
    // The content security policy allows no data: sources for fonts and scripts, so nothing is inlined.
    assetsInlineLimit: 0,
    // The plot library alone is larger than the default; it is loaded by the views that plot.
    chunkSizeWarningLimit: 2500,
    reportCompressedSize: false,
  },
};

/**
 * A CommonJS bundle for Electron's main process and for Node.
 * All files lie in one folder, so `__dirname` is dist/main in each of them, whichever chunk a line ends up in.
 * @param {{ input: Record<string, string>, external: string[], oneFile: boolean, emptyOutDir: boolean }} what
 * @returns {import('vite').InlineConfig}
 */
function nodeConfig({ input, external, oneFile, emptyOutDir }) {
  return {
    ...common,
    root,
    publicDir: false,
    plugins: [pdfkitInBundle()],
    ssr: { target: 'node', noExternal: true, external },
    build: {
      ssr: true,
      outDir: inRoot('dist', 'main'),
      emptyOutDir,
      target: ['node18', 'chrome114'],
      sourcemap: true,
      minify: false,
      rolldownOptions: {
        input,
        external: [...external, /^node:/],
        output: {
          format: 'cjs', entryFileNames: '[name].cjs', chunkFileNames: '[name]-[hash].cjs',
          ...(oneFile ? { codeSplitting: false } : {}),
        },
      },
    },
  };
}

/** Main process, command line (with the loopback host) and worker. */
export const mainConfig = nodeConfig({
  input: {
    main: inRoot('main', 'main.ts'),
    culet: inRoot('main', 'cli', 'culet.ts'),
    worker: inRoot('main', 'workers', 'worker.ts'),
    'verify-worker': inRoot('main', 'verify', 'verify-worker.ts'),
  },
  // Electron is there by itself; the database binding and the picture decoder find their binaries beside their own files.
  external: ['electron', 'better-sqlite3', 'sharp'], oneFile: false, emptyOutDir: true,
});

/** The preload: a sandboxed one cannot load other files, so it is a single one. */
export const preloadConfig = nodeConfig({
  input: { preload: inRoot('main', 'preload.ts') },
  external: ['electron'], oneFile: true, emptyOutDir: false,
});
