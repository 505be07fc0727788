import { spawnSync } from 'node:child_process';
import { chmodSync, createReadStream, createWriteStream, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createBrotliDecompress } from 'node:zlib';
import { alone } from '../../../scripts/lib/lock.mjs';
import { cacheFolder } from '../../../scripts/lib/paths.mjs';
import type { Browser } from './chromium.ts';

/** The folder of the package that carries a headless Chromium (Linux x64), compressed. */
function packageFolder(): string {
  return join(dirname(createRequire(import.meta.url).resolve('@sparticuz/chromium')), '..', '..');
}

async function unpackFile(from: string, to: string): Promise<void> {
  await pipeline(createReadStream(from), createBrotliDecompress(), createWriteStream(to));
  chmodSync(to, 0o755);
}

/** Unpacks with the system's own tar, which every Linux has. */
async function unpackArchive(from: string, to: string): Promise<void> {
  mkdirSync(to, { recursive: true });
  // By way of a file: tar stops reading at the archive's end mark, which a pipe would take for a failure.
  const archive = join(to, basename(from, '.br'));
  await pipeline(createReadStream(from), createBrotliDecompress(), createWriteStream(archive));
  const tar = spawnSync('tar', ['-x', '--no-same-owner', '-f', archive, '-C', to], { encoding: 'utf8' });
  if (tar.status !== 0) throw new Error(`tar could not unpack ${from}: ${tar.stderr || String(tar.error)}`);
  rmSync(archive);
}

/** The names of the shared libraries that `program` asks for and this system does not have. */
export function missingLibraries(program: string): string[] {
  const listed = spawnSync('ldd', [program], { encoding: 'utf8' }).stdout ?? '';
  return [...listed.matchAll(/^\s*(\S+) => not found/gm)].map((match) => match[1]!);
}

function hasFonts(): boolean {
  return (spawnSync('fc-list', { encoding: 'utf8' }).stdout ?? '').trim() !== '';
}

/** The package's own font settings name folders of another machine. */
function fontsConf(folder: string): string {
  return `<?xml version="1.0"?>\n<!DOCTYPE fontconfig SYSTEM "fonts.dtd">\n<fontconfig><dir>${folder}</dir><cachedir>${folder}/cache</cachedir></fontconfig>\n`;
}

async function unpack(bin: string, folder: string): Promise<void> {
  mkdirSync(folder, { recursive: true });
  await Promise.all([
    unpackFile(join(bin, 'chromium.br'), join(folder, 'chromium')),
    unpackArchive(join(bin, 'swiftshader.tar.br'), folder),
    unpackArchive(join(bin, 'fonts.tar.br'), join(folder, 'fonts')),
    // NSS and NSPR, for systems without them.
    unpackArchive(join(bin, 'al2023.tar.br'), join(folder, 'nss')),
  ]);
  writeFileSync(join(folder, 'fonts', 'fonts.conf'), fontsConf(join(folder, 'fonts')));
  writeFileSync(join(folder, 'complete'), '');
}

/**
 * The Chromium that came with the packages, unpacked once into the cache folder.
 * Libraries and fonts of the package are lent to it only where the system has none.
 */
export async function packagedChromium(): Promise<Browser> {
  const source = packageFolder();
  const { version } = JSON.parse(readFileSync(join(source, 'package.json'), 'utf8')) as { version: string };
  const folder = join(cacheFolder, `chromium-${version}`);
  const done = () => existsSync(join(folder, 'complete'));
  if (!done()) await alone(`${folder}.lock`, async () => { if (!done()) await unpack(join(source, 'bin'), folder); });
  const program = join(folder, 'chromium');
  const lent: Record<string, string> = {};
  if (missingLibraries(program).length > 0) {
    lent['LD_LIBRARY_PATH'] = [join(folder, 'nss', 'lib'), process.env['LD_LIBRARY_PATH'] ?? ''].filter((part) => part !== '').join(':');
  }
  if (!hasFonts()) lent['FONTCONFIG_FILE'] = join(folder, 'fonts', 'fonts.conf');
  return { program, env: lent, name: `packaged Chromium ${version}` };
}
