import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { inRoot } from './paths.mjs';
import { runOnProjectNode } from './prepare.mjs';
import { say } from './say.mjs';

/** Where Electron's launcher fetches its binary from when no mirror is named. */
const DOWNLOAD_HOST = 'github.com';
/** About 120 MB on a slow line; without a line only what lies in the download cache can be unpacked. */
const LIMIT_MS = { reachable: 600_000, unreachable: 30_000, probe: 5_000 };

/** @typedef {{ ok: true, value: string } | { ok: false, reason: string }} Found */

/** @returns {string} the program's name inside Electron's folder */
const programName = () => ({ win32: 'electron.exe', darwin: 'Electron.app/Contents/MacOS/Electron' }[/** @type {'win32' | 'darwin'} */ (process.platform)] ?? 'electron');

/**
 * Electron's program as it lies on this machine, without fetching it.
 * ELECTRON_OVERRIDE_DIST_PATH, Electron's own variable, names another folder.
 * @returns {Found}
 */
export function installedElectron() {
  const override = process.env['ELECTRON_OVERRIDE_DIST_PATH'];
  if (override) {
    const file = join(override, programName());
    return existsSync(file) ? { ok: true, value: file } : { ok: false, reason: `ELECTRON_OVERRIDE_DIST_PATH names ${override}, where no Electron is` };
  }
  const pathFile = inRoot('node_modules', 'electron', 'path.txt');
  const file = existsSync(pathFile) ? inRoot('node_modules', 'electron', 'dist', readFileSync(pathFile, 'utf8').trim()) : null;
  return file !== null && existsSync(file) ? { ok: true, value: file } : { ok: false, reason: 'Electron\'s binary is not on this machine' };
}

/** @param {string | { host: string, port: number }} where a socket file or an address */
function answers(where) {
  return new Promise((resolve) => {
    const socket = typeof where === 'string' ? connect(where) : connect(where.port, where.host);
    /** @param {boolean} yes */
    const end = (yes) => { socket.destroy(); resolve(yes); };
    socket.setTimeout(LIMIT_MS.probe, () => end(false));
    socket.once('connect', () => end(true));
    socket.once('error', () => end(false));
  });
}

/** Whether a window can be shown. @returns {Promise<Found>} the value names the display */
export async function display() {
  if (process.platform !== 'linux') return { ok: true, value: process.platform };
  const { WAYLAND_DISPLAY: wayland, XDG_RUNTIME_DIR: runtime, DISPLAY: x11 } = process.env;
  if (wayland && runtime && existsSync(join(runtime, wayland))) return { ok: true, value: wayland };
  if (!x11) return { ok: false, reason: 'there is no display' };
  const parts = /^(?:unix)?([^:]*):(\d+)/.exec(x11);
  if (parts === null) return { ok: false, reason: `the display ${x11} is not one` };
  const [, host = '', number = '0'] = parts;
  // The abstract socket (leading zero byte) exists where the file in /tmp does not.
  const alive = host === '' || host.startsWith('/')
    ? await answers(`/tmp/.X11-unix/X${number}`) || await answers(`\0/tmp/.X11-unix/X${number}`)
    : await answers({ host, port: 6000 + Number(number) });
  return alive ? { ok: true, value: x11 } : { ok: false, reason: `the display ${x11} does not answer` };
}

/** Whether the program's libraries are all here: it is started as a plain Node, which needs no display. @param {string} program @returns {Found} */
export function startsAtAll(program) {
  const probe = spawnSync(program, ['-e', 'process.exit(0)'], { env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' }, encoding: 'utf8', timeout: 20_000 });
  if (probe.status === 0) return { ok: true, value: program };
  const line = (probe.stderr ?? '').split('\n').find((text) => text.trim() !== '') ?? String(probe.error ?? probe.signal);
  return { ok: false, reason: `Electron does not start here (${line.trim()})` };
}

/**
 * Lets Electron's own launcher fetch its binary, for a limited time.
 * @returns {Promise<Found>} the program's file
 */
export async function fetchElectron() {
  const proxied = Object.keys(process.env).some((name) => /^(npm_config_)?(https?_proxy|electron_mirror|electron_custom_dir)$/i.test(name));
  const reachable = proxied || await answers({ host: DOWNLOAD_HOST, port: 443 });
  if (reachable) say('Fetching Electron\'s binary, once (about 120 MB)');
  const { code, killed } = await runOnProjectNode([inRoot('node_modules', 'electron', 'install.js')], {
    stdio: ['ignore', 'ignore', reachable ? 2 : 'ignore'], limitMs: reachable ? LIMIT_MS.reachable : LIMIT_MS.unreachable,
  });
  const found = installedElectron();
  if (code === 0 && found.ok) return found;
  const why = !reachable ? 'its download host cannot be reached' : killed ? 'the download took too long' : 'the download failed';
  return { ok: false, reason: `Electron's binary is not on this machine and ${why}` };
}
