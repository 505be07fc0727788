import { z } from 'zod';
import { reportVerdict } from '../signature/report-verdict.ts';
import { id } from './common.ts';
import { reads } from './operation.ts';

export const reportCheckContract = {
  /** Tells whether a PDF that was carried here (app/contract/uploads.ts) is a report as a laboratory issued it. Needs no casebook; where one is open, its keys and its reports are known too. */
  'reports.check': reads('door', z.strictObject({ upload: id }), reportVerdict),
};
