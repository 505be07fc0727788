import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** The faces of the printed page. */
export const FONT_ROLES = ['heading', 'sans', 'sans500', 'sans600', 'mono', 'mono500'] as const;
export type FontRole = (typeof FONT_ROLES)[number];

/** Family folder of @fontsource and weight of each face. */
const FACES: Readonly<Record<FontRole, { readonly family: string; readonly weight: number }>> = {
  heading: { family: 'spectral', weight: 500 },
  sans: { family: 'ibm-plex-sans', weight: 400 },
  sans500: { family: 'ibm-plex-sans', weight: 500 },
  sans600: { family: 'ibm-plex-sans', weight: 600 },
  mono: { family: 'ibm-plex-mono', weight: 400 },
  mono500: { family: 'ibm-plex-mono', weight: 500 },
};

/** Each family is split by script; a letter is looked for in this order. Not every family has every part. */
const PARTS = ['latin', 'latin-ext', 'vietnamese', 'greek', 'cyrillic', 'cyrillic-ext'] as const;

/** A face that lends its letters where the wanted one has none: the headings' family has no Greek. */
const LENDER: Readonly<Record<FontRole, FontRole | null>> = {
  heading: 'sans500', sans: null, sans500: 'sans', sans600: 'sans500', mono: 'sans', mono500: 'sans500',
};

export type FontFile = { readonly key: string; readonly path: string };

const folders = new Map<string, string>();

/** Where the font files of a family lie: beside the program when it is built, in node_modules otherwise. Throws when neither is there. */
function folderOf(family: string): string {
  const known = folders.get(family);
  if (known !== undefined) return known;
  const probe = `${family}-latin-400-normal.woff`;
  const probeHeading = `${family}-latin-500-normal.woff`;
  const candidates = [
    ...(typeof __dirname === 'string' ? [join(__dirname, '..', 'assets', 'fonts'), join(__dirname, '..', '..', 'node_modules', '@fontsource', family, 'files')] : []),
    join(process.cwd(), 'node_modules', '@fontsource', family, 'files'),
  ];
  const found = candidates.find((folder) => existsSync(join(folder, probe)) || existsSync(join(folder, probeHeading)));
  if (found === undefined) throw new Error(`The typeface ${family} is missing. Looked in: ${candidates.join(', ')}`);
  folders.set(family, found);
  return found;
}

/** The files in which a letter of this face is looked for, best first. */
export function filesOf(role: FontRole): readonly FontFile[] {
  const files: FontFile[] = [];
  for (let face: FontRole | null = role; face !== null; face = LENDER[face]) {
    const { family, weight } = FACES[face];
    for (const part of PARTS) {
      const name = `${family}-${part}-${weight}-normal.woff`;
      const path = join(folderOf(family), name);
      if (existsSync(path)) files.push({ key: name, path });
    }
  }
  return files;
}

/** Names of all files a built program must carry, with their family: used when the program is bundled. */
export const CARRIED_FONTS: readonly { readonly family: string; readonly name: string }[] =
  FONT_ROLES.flatMap((role) => PARTS.map((part) => ({ family: FACES[role].family, name: `${FACES[role].family}-${part}-${FACES[role].weight}-normal.woff` })));
