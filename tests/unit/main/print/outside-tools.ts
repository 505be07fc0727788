import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { existsSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';

/** Programs of others that know PDF: used where the machine has them, never required. */
const TOOLS = ['qpdf', 'pdfinfo', 'pdffonts', 'pdfdetach', 'pdftotext', 'java', 'openssl'] as const;
export type Tool = (typeof TOOLS)[number];

const folders = (process.env['PATH'] ?? '').split(path.delimiter);
export const foundTools: readonly Tool[] = TOOLS.filter((tool) => folders.some((folder) => existsSync(path.join(folder, tool)) || existsSync(path.join(folder, `${tool}.exe`))));
export const hasTool = (tool: Tool): boolean => foundTools.includes(tool);

/** The PDF/A-1b validator of Apache PDFBox as Debian packages it, or null. */
const JARS = ['preflight', 'pdfbox2', 'xmpbox', 'fontbox2', 'commons-logging', 'bcprov', 'javax.activation', 'jaxb-api'].map((name) => `/usr/share/java/${name}.jar`);
export const hasPreflight = hasTool('java') && JARS.every((jar) => existsSync(jar));

/** Runs a tool in a folder of its own that holds the file as report.pdf; gives its output and what the folder holds afterwards. */
export function runTool(tool: string, args: readonly string[], pdf: Uint8Array): { readonly code: number; readonly out: string; readonly files: ReadonlyMap<string, Buffer> } {
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-tool-'));
  try {
    writeFileSync(path.join(folder, 'report.pdf'), pdf);
    const { status, stdout, stderr } = spawnSync(tool, args, { cwd: folder, encoding: 'latin1', maxBuffer: 64 * 1024 * 1024 });
    return { code: status ?? -1, out: `${stdout}${stderr}`, files: new Map(readdirSync(folder).map((name) => [name, readFileSync(path.join(folder, name))])) };
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** What the PDF/A-1b validator complains of: code and sentence, each once. */
export function preflightFindings(pdf: Uint8Array): string[] {
  const { out } = runTool('java', ['-cp', JARS.join(':'), 'org.apache.pdfbox.preflight.Validator_A1b', 'report.pdf'], pdf);
  return [...new Set(out.split('\n').filter((line) => /^\d+(\.\d+)* : /.test(line)).map((line) => line.slice(0, 90)))];
}
