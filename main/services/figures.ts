import type { figuresContract } from '../../app/contract/figures.ts';
import type { Failure } from '../../app/contract/failure.ts';
import { err, ok, type Result } from '../../app/result.ts';
import type { TrialRefusal } from '../../db/store/trials.ts';
import { changing, reading, type IntakeDeps } from './intake-context.ts';
import type { Services } from './service.ts';

const wrong = (field: string, message: string, next: string): Failure => ({ code: 'invalid-input', message, next, fields: { [field]: message } });

const REFUSALS: Readonly<Record<TrialRefusal, Failure>> = {
  'label-taken': wrong('label', 'There is already a known sample of this name.', 'Give it a name of its own, as it stands on its box.'),
  'no-sample': { code: 'not-found', message: 'This known sample is not in the casebook.', next: 'Load the list again and choose one of it.' },
  withdrawn: { code: 'refused', message: 'This known sample was withdrawn.', next: 'Choose another; its earlier trials stay as they are.' },
  'no-stone': wrong('stoneLabel', 'There is no such stone in such a case.', 'Look at the number of the case and the label of the stone, for instance C-2026-0001 and A-1.'),
  'not-confirmed': wrong('stoneLabel', 'No second person has agreed with the standing conclusion of this stone.', 'Link it once its conclusion is confirmed, so that nobody learns too early what it is.'),
  'already-linked': wrong('stoneLabel', 'This stone is linked to a known sample already.', 'One stone of a case is one trial.'),
  'no-person': wrong('examinerId', 'This person is not in the casebook.', 'Choose one of the list.'),
  'not-blind': wrong('blind', 'You examined it yourself and enter it yourself: you knew what it was.', 'Take the tick back; the trial is then kept apart from those in which the examiner did not know.'),
  'no-trial': { code: 'not-found', message: 'This trial is not in the casebook.', next: 'Load the list again and choose one of it.' },
  'taken-back': { code: 'conflict', message: 'This trial was taken back already.', next: 'Nothing more is to be done; it counts nowhere.' },
  'no-instrument': wrong('instrumentIds', 'One of these instruments is not in the casebook.', 'Load the list again and choose of it.'),
  'in-future': wrong('examinedOn', 'That day has not come yet.', 'Enter the day on which the examination was concluded.'),
};

const told = <T>(result: Result<T, TrialRefusal>): Result<T, Failure> => (result.ok ? result : err(REFUSALS[result.error]));

/** What the manager answers for, in numbers. */
export function createFiguresServices(deps: IntakeDeps): Pick<Services, keyof typeof figuresContract> {
  return {
    'figures.overTime': reading(deps, async (casebook, period) => ok(await casebook.figures.overTime(period))),
    'figures.agreement': reading(deps, async (casebook, period) => ok(await casebook.figures.agreement(period))),
    'figures.checks': reading(deps, async (casebook, period) => ok(await casebook.figures.checks(period))),
    'trials.list': reading(deps, async (casebook, period) => ok(await casebook.trials.list(period))),
    'trials.addSample': changing(deps, 'trials.addSample', async (casebook, change, sample) => told(await casebook.trials.addSample(change, sample))),
    'trials.withdrawSample': changing(deps, 'trials.withdrawSample', async (casebook, change, { sampleId, ...withdrawal }) => told(await casebook.trials.withdrawSample(change, sampleId, withdrawal))),
    'trials.withdraw': changing(deps, 'trials.withdraw', async (casebook, change, { trialId, reason }) => told(await casebook.trials.withdraw(change, trialId, reason))),
    'trials.addFromStone': changing(deps, 'trials.addFromStone', async (casebook, change, trial) => told(await casebook.trials.addFromStone(change, { ...trial, caseNumber: trial.caseNumber.trim(), stoneLabel: trial.stoneLabel.trim() }))),
    'trials.addByHand': changing(deps, 'trials.addByHand', async (casebook, change, trial) => told(await casebook.trials.addByHand(change, trial))),
  };
}
