/** A file with the path it has below what was dropped or chosen. */
export type BatchFile = { readonly path: string; readonly file: File };

/** More than this is more than a table can tell; a laboratory's day is far below. */
export const MOST_FILES = 20_000;

const isHidden = (name: string): boolean => name.startsWith('.');

function readAll(reader: FileSystemDirectoryReader): Promise<FileSystemEntry[]> {
  return new Promise((resolve, reject) => {
    const found: FileSystemEntry[] = [];
    // A browser hands over a folder's entries in portions, until there are none left.
    const more = (): void => { reader.readEntries((entries) => { if (entries.length === 0) resolve(found); else { found.push(...entries); more(); } }, reject); };
    more();
  });
}

const fileOf = (entry: FileSystemFileEntry): Promise<File> => new Promise((resolve, reject) => { entry.file(resolve, reject); });

async function walk(entry: FileSystemEntry, into: BatchFile[]): Promise<void> {
  if (isHidden(entry.name) || into.length >= MOST_FILES) return;
  if (entry.isFile) into.push({ path: entry.fullPath.replace(/^\//, ''), file: await fileOf(entry as FileSystemFileEntry) });
  else if (entry.isDirectory) for (const child of await readAll((entry as FileSystemDirectoryEntry).createReader())) await walk(child, into);
}

const byPath = (a: BatchFile, b: BatchFile): number => (a.path < b.path ? -1 : 1);

/** Entries of a drop; must be asked for while the event is handled. */
export const entriesOf = (transfer: DataTransfer): FileSystemEntry[] => [...transfer.items].flatMap((item) => item.webkitGetAsEntry() ?? []);

/** All files in what was dropped, folders within folders too, sorted by path; hidden ones are left out. */
export async function filesOfEntries(entries: readonly FileSystemEntry[]): Promise<BatchFile[]> {
  const found: BatchFile[] = [];
  for (const entry of entries) await walk(entry, found);
  return found.sort(byPath);
}

/** The files of a folder or of several files chosen in the system's own window. */
export const filesOfPicker = (files: Iterable<File>): BatchFile[] =>
  [...files].map((file) => ({ path: file.webkitRelativePath === '' ? file.name : file.webkitRelativePath, file })).filter(({ path }) => !path.split('/').some(isHidden)).slice(0, MOST_FILES).sort(byPath);
