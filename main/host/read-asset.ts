import { readFile } from 'node:fs/promises';
import path from 'node:path';

export type Asset = { readonly body: Buffer; readonly mediaType: string };

const MEDIA_TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/**
 * File under `root` for the path of a URL ('/' is the page itself), or null where the path is malformed or leaves `root`.
 * `pathname` is still percent-encoded.
 */
export function resolveAsset(root: string, pathname: string): string | null {
  const plain = decodePath(pathname === '/' ? '/index.html' : pathname);
  if (plain === null || !plain.startsWith('/') || plain.includes('\0') || plain.includes('\\')) return null;
  const file = path.resolve(root, `.${plain}`);
  const inside = path.relative(root, file);
  return inside === '' || inside.startsWith('..') || path.isAbsolute(inside) ? null : file;
}

/** The file a page asks for, or null: not there, not ours, or of a kind the page never needs. */
export async function readAsset(root: string, pathname: string): Promise<Asset | null> {
  const file = resolveAsset(root, pathname);
  const mediaType = file === null ? undefined : MEDIA_TYPES[path.extname(file).toLowerCase()];
  if (file === null || mediaType === undefined) return null;
  try {
    return { body: await readFile(file), mediaType };
  } catch {
    return null;
  }
}

function decodePath(pathname: string): string | null {
  try {
    return decodeURIComponent(pathname);
  } catch {
    return null;
  }
}
