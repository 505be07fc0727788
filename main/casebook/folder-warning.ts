import { readFileSync } from 'node:fs';
import { resolve, sep } from 'node:path';

/** Folders of programs that copy files behind one's back: such a copy of an open casebook is never whole. */
const SYNCED = /^(dropbox|onedrive|google ?drive|icloud ?drive|mobile documents|nextcloud|owncloud|syncthing|box sync|pcloud ?drive)/i;
/** Kinds of file systems behind a network, as Linux names them. SQLite's write-ahead log does not work there. */
const NETWORK = /^(nfs\d?|cifs|smb\d?|smbfs|fuse\.sshfs|afs|ceph|glusterfs|davfs|fuse\.rclone)$/;

type Mount = { readonly point: string; readonly kind: string };

function mounts(text: string): Mount[] {
  return text.split('\n').map((line) => line.split(' ')).filter((parts) => parts.length > 2)
    .map((parts) => ({ point: parts[1]!.replaceAll('\\040', ' '), kind: parts[2]! }));
}

function linuxMounts(): string {
  try {
    return readFileSync('/proc/mounts', 'utf8');
  } catch {
    return '';
  }
}

/** A sentence where the data folder lies in a place that endangers a casebook, else null. `mountTable` is the text of /proc/mounts. */
export function folderWarning(folder: string, mountTable: string = linuxMounts()): string | null {
  const path = resolve(folder);
  const next = 'Keep the casebook on a disk of this computer, and copy its backups to the other place instead.';
  const synced = path.split(sep).find((part) => SYNCED.test(part));
  if (synced !== undefined) return `The casebook lies in “${synced}”, a folder that another program copies: it may be damaged there. ${next}`;
  const under = mounts(mountTable).filter((m) => path === m.point || path.startsWith(m.point.endsWith('/') ? m.point : `${m.point}/`));
  const nearest = under.sort((a, b) => b.point.length - a.point.length)[0];
  const network = path.startsWith('\\\\') || (nearest !== undefined && NETWORK.test(nearest.kind));
  return network ? `The casebook lies on a network drive, where it may be damaged. ${next}` : null;
}
