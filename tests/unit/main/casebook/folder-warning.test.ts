import { expect, test } from 'vitest';
import { folderWarning } from '../../../../main/casebook/folder-warning.ts';

const MOUNTS = ['/dev/sda1 / ext4 rw 0 0', 'server:/x /mnt/share nfs4 rw 0 0', '//s/y /media/my\\040disk cifs rw 0 0', '/dev/sdb1 /mnt/share/local ext4 rw 0 0'].join('\n');

test.each([
  ['/home/ada/.config/Culet', false], ['/mnt/share/Culet', true], ['/mnt/shared/Culet', false], ['/media/my disk/Culet', true], ['/mnt/share/local/Culet', false],
  ['/home/ada/Dropbox/Culet', true], ['/home/ada/OneDrive - Laboratory/Culet', true], ['/home/ada/boxes/Culet', false],
])('%s: warned %s', (folder, warned) => {
  expect(folderWarning(folder, MOUNTS) !== null).toBe(warned);
});
