import { err, ok, type Result } from '../../../app/result.ts';
import { findCase, openView, viewCall, type CasebookView } from '../casebook-view.ts';
import { EXIT, type CliIo, type ExitCode } from '../io.ts';
import { printJson } from '../json-out.ts';
import { sayTrouble, type Trouble } from '../trouble.ts';
import { writeOut } from '../write-out.ts';

export type ReportCommand = {
  /** Of the case. */
  readonly number: string;
  readonly out: string;
  readonly casebook: string | undefined;
  readonly dataFolder: string;
  readonly draft: boolean;
  readonly json: boolean;
};

type Pdf = { readonly report: string | null; readonly revision: number | null; readonly pdf: Uint8Array };

/** Writes the PDF as it was issued last, byte for byte, or a draft of what it would be now. */
export async function runReport(command: ReportCommand, io: CliIo): Promise<ExitCode> {
  const { number, out, draft, json } = command;
  const view = await openView({ ...command, workingFolder: io.workingFolder });
  if (!view.ok) return sayTrouble(view.error, json, io);
  try {
    const found = await findCase(view.value, number);
    if (!found.ok) return sayTrouble(found.error, json, io);
    const made = await (draft ? draftOf : lastIssuedOf)(view.value, found.value);
    if (!made.ok) return sayTrouble(made.error, json, io);
    const { pdf, report, revision } = made.value;
    const written = writeOut(out, pdf, io.workingFolder);
    if (!written.ok) return sayTrouble(written.error, json, io);
    const { file, bytes, sha256 } = written.value;
    if (json) printJson(io, { ok: true, case: found.value.number, report, revision, draft, file, bytes, sha256 });
    else io.out(`${draft ? `Draft for case ${found.value.number}` : `Report ${report ?? ''}, revision ${revision ?? ''}, of case ${found.value.number}`} written to ${file} (${bytes} bytes, SHA-256 ${sha256}).\n`);
    return EXIT.done;
  } finally {
    view.value.close();
  }
}

type Case = { readonly id: string; readonly number: string };

async function draftOf({ services }: CasebookView, { id }: Case): Promise<Result<Pdf, Trouble>> {
  const preview = await services['reports.preview']({ caseId: id }, viewCall());
  return preview.ok ? ok({ report: null, revision: null, pdf: preview.value.pdf }) : preview;
}

async function lastIssuedOf({ services }: CasebookView, { id, number }: Case): Promise<Result<Pdf, Trouble>> {
  const listed = await services['reports.list']({ caseId: id }, viewCall());
  if (!listed.ok) return listed;
  const last = [...listed.value].sort((a, b) => (a.issuedAt < b.issuedAt ? -1 : a.issuedAt > b.issuedAt ? 1 : a.revision - b.revision)).at(-1);
  if (last === undefined) return err({ code: 'not-issued', message: `No report has been issued for case ${number}.`, next: 'Issue it in the window, or add --draft to see what it would say now.' });
  const pdf = await services['reports.pdf']({ reportId: last.id }, viewCall());
  return pdf.ok ? ok({ report: last.number, revision: last.revision, pdf: pdf.value.pdf }) : pdf;
}
