import type { FileFormat } from '../../app/files/spectrum-file.ts';

const BY_ENDING: Readonly<Record<string, string>> = {
  png: 'image/png', jpg: 'image/jpeg', jpeg: 'image/jpeg', tif: 'image/tiff', tiff: 'image/tiff', pdf: 'application/pdf',
  txt: 'text/plain', csv: 'text/csv', tsv: 'text/tab-separated-values', xml: 'application/xml', json: 'application/json', zip: 'application/zip',
};

/** Media type of a file: by what it was read as, else by the ending of its name. JCAMP-DX: IUPAC's chemical media type. */
export function mediaTypeOf(name: string, format: FileFormat | null): string {
  if (format === 'jcamp-dx') return 'chemical/x-jcamp-dx';
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? '';
  return BY_ENDING[ending] ?? (format === 'delimited-text' ? 'text/plain' : 'application/octet-stream');
}
