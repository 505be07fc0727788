import { BROAD_BANDS } from '../../../app/reference/broad-bands.ts';
import { INFRARED_REFERENCE_LINES } from '../../../app/reference/infrared-reference-lines.ts';
import { OPTICAL_CENTRES } from '../../../app/reference/optical-centres.ts';
import { ARTEFACT_LINES, SIMULANTS } from '../../../app/reference/reference-lines.ts';

const standing = (source: string): string => (/from memory/.test(source) ? 'from memory' : 'published');
const cell = (text: string): string => text.replaceAll('|', '\\|');
const width = (value: number | null): string => (value === null ? '–' : String(value));

/** Rows of docs/sources.md that follow from the tables, by heading. */
export const SOURCE_ROWS: Readonly<Record<string, readonly string[]>> = {
  'Optical centres': OPTICAL_CENTRES.map((c) =>
    `| \`${c.id}\` | ${cell(c.name)} | ${c.modes.join(', ')} | ${c.coldNm} ± ${c.coldHalfWindowNm} | ${c.roomNm} (${c.roomWindowNm.map((nm) => Number(nm.toFixed(2))).join('–')}) | ${width(c.coldFwhmNm)} / ${width(c.roomFwhmNm)} | ${cell(c.source)} | ${standing(c.source)} |`),
  'Infrared lines': INFRARED_REFERENCE_LINES.map((l) => `| \`${l.id}\` | ${l.what} | ${l.cm1} ± ${l.toleranceCm1} | ${cell(l.source)} | ${standing(l.source)} |`),
  'Broad bands': BROAD_BANDS.map((b) => `| \`${b.id}\` | ${b.nm} | ${b.fwhmNm} | ${cell(b.source)} | centre ${standing(b.source)}, width from memory |`),
  'Raman lines of imitations': SIMULANTS.map((s) => `| \`${s.id}\` | ${s.name} | ${s.linesCm1.join(', ')} |`),
  'Light that is not the stone’s': ARTEFACT_LINES.map((a) => `| \`${a.id}\` | ${a.nm} ± ${a.halfWindowNm} | ${a.what} |`),
};
