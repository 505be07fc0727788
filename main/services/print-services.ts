import type { LaboratoryView } from '../../app/contract/casebook.ts';
import type { CaseView } from '../../app/contract/cases.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { buildLabelsModel } from '../../app/report/build-labels-model.ts';
import { buildReceiptModel } from '../../app/report/build-receipt-model.ts';
import { ok, type Result } from '../../app/result.ts';
import { taskFailure } from '../workers/task-failure.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { noCasebook } from './failures.ts';
import type { Call, Services } from './service.ts';

export type PrintDeps = {
  /** Where the case and the laboratory come from: what is printed is what the window shows. */
  readonly services: Pick<Services, 'casebook.status' | 'cases.get'>;
  readonly pool: Pick<TaskPool, 'run'>;
};

type PrintServices = Pick<Services, 'print.receipt' | 'print.labels'>;

/** A name that every file system takes. */
export const fileName = (what: string, caseNumber: string): string => `${what} ${caseNumber.replace(/[^\p{L}\p{N}._-]+/gu, '-')}.pdf`;

/** The laboratory's logo as a model carries it. */
export const logoOf = (laboratory: LaboratoryView) =>
  laboratory.logo === null ? null : { mediaType: laboratory.logo.mediaType, base64: Buffer.from(laboratory.logo.bytes).toString('base64') };

/** Receipt and labels of a case, drawn away from the main thread. */
export function createPrintServices({ services, pool }: PrintDeps): PrintServices {
  async function gather(caseId: string, call: Call): Promise<Result<{ laboratory: LaboratoryView; view: CaseView }, Failure>> {
    const status = await services['casebook.status']({}, call);
    if (!status.ok) return status;
    const { laboratory } = status.value;
    if (laboratory === null) return noCasebook();
    const view = await services['cases.get']({ caseId }, call);
    return view.ok ? ok({ laboratory, view: view.value }) : view;
  }
  return {
    'print.receipt': async ({ caseId }, call) => {
      const gathered = await gather(caseId, call);
      if (!gathered.ok) return gathered;
      const { laboratory, view } = gathered.value;
      const drawn = await pool.run('render-receipt', buildReceiptModel(laboratory, view, logoOf(laboratory)), { signal: call.signal });
      return drawn.ok ? ok({ name: fileName('Receipt', view.number), pdf: drawn.value }) : taskFailure(drawn.error);
    },
    'print.labels': async ({ caseId }, call) => {
      const gathered = await gather(caseId, call);
      if (!gathered.ok) return gathered;
      const { laboratory, view } = gathered.value;
      const drawn = await pool.run('render-labels', buildLabelsModel(laboratory, view), { signal: call.signal });
      return drawn.ok ? ok({ name: fileName('Labels', view.number), pdf: drawn.value }) : taskFailure(drawn.error);
    },
  };
}
