import { PDFArray, PDFBool, PDFDict, PDFName, type PDFPage, type PDFRawStream } from '@cantoo/pdf-lib';
import { operationsOf, OPERATORS, type Operation } from './content-stream.ts';
import { at, decoded, dictsOfType, isRawStream, listAt, nameAt, xObjects, type PdfFile } from './pdf-file.ts';
import { each, whether, type Rule } from './rule.ts';

const INTENTS = new Set(['RelativeColorimetric', 'AbsoluteColorimetric', 'Perceptual', 'Saturation']);
const BLEND_MODES = new Set('Normal Compatible Multiply Screen Overlay Darken Lighten ColorDodge ColorBurn HardLight SoftLight Difference Exclusion Hue Saturation Color Luminosity'.split(' '));

/** Everything that a page draws, its streams one after the other. */
export function operationsOfPage(file: PdfFile, page: PDFPage): Operation[] {
  const contents = at(file, page.node, 'Contents');
  const streams = contents instanceof PDFArray ? listAt(file, page.node, 'Contents') : [contents];
  return streams.flatMap((stream) => (stream !== undefined && isRawStream(stream) ? operationsOf(decoded(stream)) : []));
}

/** Content of everything that draws: pages, and forms. */
const drawings = (file: PdfFile): { what: string; operations: Operation[] }[] => [
  ...file.doc.getPages().map((page, i) => ({ what: `page ${i + 1}`, operations: operationsOfPage(file, page) })),
  ...file.objects.flatMap(({ ref, object }) => (isRawStream(object) && nameAt(file, object.dict, 'Subtype') === 'Form' ? [{ what: `form ${ref.toString()}`, operations: operationsOf(decoded(object)) }] : [])),
];

function deepest(operations: readonly Operation[]): number {
  let depth = 0;
  return operations.reduce((most, { operator }) => {
    depth += operator === 'q' ? 1 : operator === 'Q' ? -1 : 0;
    return Math.max(most, depth);
  }, 0);
}

const outputProfiles = (file: PdfFile): PDFRawStream[] => listAt(file, file.doc.catalog, 'OutputIntents')
  .flatMap((intent) => (intent instanceof PDFDict && nameAt(file, intent, 'S') === 'GTS_PDFA1' ? [at(file, intent, 'DestOutputProfile')] : []))
  .flatMap((profile) => (profile !== undefined && isRawStream(profile) ? [profile] : []));

/** Device class and colour space of a profile, four letters each, and its major version: ICC.1, 7.2, bytes 12, 16 and 8. */
function profileHead(profile: PDFRawStream): { kind: string; space: string; version: number } {
  const bytes = decoded(profile);
  const letters = (from: number): string => Buffer.from(bytes.subarray(from, from + 4)).toString('latin1');
  return { kind: letters(12), space: letters(16), version: bytes[8]! };
}

/** The single profile says what red, green and blue are. */
const describesRgb = (file: PdfFile): boolean => {
  const [profile] = outputProfiles(file);
  return profile !== undefined && profileHead(profile).space === 'RGB ';
};

const usesName = (file: PdfFile, name: string): boolean => file.values.some(({ value }) => value instanceof PDFName && value.decodeText() === name);
const draws = (file: PdfFile, ...operators: readonly string[]): boolean => drawings(file).some(({ operations }) => operations.some(({ operator }) => operators.includes(operator)));
const extStates = (file: PdfFile): { dict: PDFDict }[] => [
  ...dictsOfType(file, 'ExtGState'),
  ...file.dicts.flatMap(({ dict }) => { const states = at(file, dict, 'ExtGState'); return states instanceof PDFDict ? states.keys().flatMap((key) => { const state = at(file, states, key.decodeText()); return state instanceof PDFDict ? [{ dict: state }] : []; }) : []; }),
];

/** Clause 6.2 but for its fonts: what is drawn. */
export const GRAPHICS_RULES: readonly Rule[] = [
  { clause: '6.1.13', says: 'states of drawing are nested no deeper than 28', faults: (file) => each(drawings(file), ({ operations }) => deepest(operations) <= 28, ({ what }) => what) },
  { clause: '6.2.2', says: 'only operators of ISO 32000-1 are used', faults: (file) => drawings(file).flatMap(({ what, operations }) => each(operations, ({ operator }) => OPERATORS.has(operator), ({ operator }) => `${what}: ${operator}`)) },
  { clause: '6.2.2', says: 'a page has resources of its own', faults: (file) => each(file.doc.getPages(), (page) => at(file, page.node, 'Resources') instanceof PDFDict, (page) => page.ref.toString()) },
  {
    clause: '6.2.3', says: 'one profile of an output or a monitor, for grey, red-green-blue or printing inks, before version 5',
    faults: (file) => {
      const profiles = outputProfiles(file);
      return [...whether(profiles.length === 1, `${profiles.length} profiles`), ...each(profiles.map(profileHead), ({ kind, space, version }) => ['prtr', 'mntr'].includes(kind) && ['RGB ', 'CMYK', 'GRAY'].includes(space) && version < 5, (head) => JSON.stringify(head))];
    },
  },
  { clause: '6.2.3', says: 'no profile is referred to outside', faults: (file) => whether(!usesName(file, 'DestOutputProfileRef'), 'DestOutputProfileRef') },
  { clause: '6.2.4.3', says: 'red, green and blue are used where a profile describes them', faults: (file) => whether(describesRgb(file) || !(usesName(file, 'DeviceRGB') || draws(file, 'rg', 'RG')), 'DeviceRGB without a profile') },
  { clause: '6.2.4.3', says: 'printing inks are not used: the profile does not describe them', faults: (file) => whether(!usesName(file, 'DeviceCMYK') && !draws(file, 'k', 'K'), 'DeviceCMYK') },
  { clause: '6.2.4.3', says: 'grey is used where there is a profile', faults: (file) => whether(outputProfiles(file).length > 0 || !(usesName(file, 'DeviceGray') || draws(file, 'g', 'G')), 'DeviceGray without a profile') },
  { clause: '6.2.4.4', says: 'spot colours are not used', faults: (file) => whether(!usesName(file, 'Separation') && !usesName(file, 'DeviceN'), 'Separation or DeviceN') },
  {
    clause: '6.2.5', says: 'no transfer functions and no halftones of its own',
    faults: (file) => each(extStates(file), ({ dict }) => at(file, dict, 'TR') === undefined && (nameAt(file, dict, 'TR2') ?? 'Default') === 'Default' && at(file, dict, 'HTP') === undefined && at(file, dict, 'HT') === undefined, ({ dict }) => dict.toString()),
  },
  {
    clause: '6.2.6', says: 'rendering intents are among the four that there are',
    faults: (file) => each([...drawings(file).flatMap(({ operations }) => operations.flatMap(({ operator, operands }) => (operator === 'ri' ? [String(operands[0]).slice(1)] : []))), ...[...xObjects(file, 'Image'), ...extStates(file)].flatMap(({ dict }) => nameAt(file, dict, 'Intent') ?? nameAt(file, dict, 'RI') ?? [])], (intent) => INTENTS.has(intent), (intent) => intent),
  },
  {
    clause: '6.2.8', says: 'an image has no alternates, no OPI, and is not smoothed',
    faults: (file) => each(xObjects(file, 'Image'), ({ dict }) => at(file, dict, 'Alternates') === undefined && at(file, dict, 'OPI') === undefined && at(file, dict, 'Interpolate') !== PDFBool.True, ({ dict }) => dict.toString().slice(0, 120)),
  },
  { clause: '6.2.9', says: 'forms hold no PostScript, no OPI and no reference; there are no PostScript objects', faults: (file) => [...each(xObjects(file, 'Form'), ({ dict }) => ['OPI', 'PS', 'Ref'].every((key) => at(file, dict, key) === undefined) && nameAt(file, dict, 'Subtype2') !== 'PS', () => 'a form'), ...xObjects(file, 'PS').map(() => 'a PostScript object')] },
  { clause: '6.2.10', says: 'blend modes are among those that there are', faults: (file) => each(extStates(file).flatMap(({ dict }) => nameAt(file, dict, 'BM') ?? []), (mode) => BLEND_MODES.has(mode), (mode) => mode) },
];
