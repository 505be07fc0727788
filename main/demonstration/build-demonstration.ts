import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { houseSettings } from '../../app/domain/house-settings.ts';
import { NOTHING_OUTSIDE } from '../../db/verify/checkpoints.ts';
import type { Casebook } from '../../db/open-casebook.ts';
import type { BuildDemonstration, CasebookManager } from '../casebook/casebook-manager.ts';
import type { Checkpoints } from '../checkpoints/checkpoints.ts';
import { aTurn } from '../../db/a-turn.ts';
import { createKeyring } from '../keys/keyring.ts';
import { makeOpenKey } from '../keys/make-open-key.ts';
import { createSessionGuard } from '../people/session-guard.ts';
import { createServices } from '../services/index.ts';
import { createUploads, type Uploads } from '../uploads/uploads.ts';
import { verifyOnThisThread } from '../verify/verify-with-helpers.ts';
import { VERSION } from '../version.ts';
import type { TaskPool } from '../workers/task-pool.ts';
import { loadScenario } from './load-scenario.ts';
import { planScenario, type Happening } from './plan-scenario.ts';
import { playIntake } from './play-intake.ts';
import { playStep } from './play-step.ts';
import type { Scenario } from './scenario-schema.ts';
import { createSeededIds } from './seeded-ids.ts';
import { askServices, under, type Stage } from './stage.ts';
import { scenarioCalendar } from './working-days.ts';

export type DemonstrationDeps = {
  readonly pool: TaskPool;
  /** The day from which the scenario counts back. */
  readonly now: () => Date;
  /** Another scenario than the one that comes with the program. */
  readonly scenario?: Scenario;
};

const ID_SEED = 20261125;

/** From which the invented laboratory's key is made: it is the same in every demonstration and no secret. */
const KEY_SEED = 'Culet demonstration key, invented, no secret';

/** The services look only for the casebook that is open; everything else a manager can do would be a mistake here. */
function managerOf(casebook: Casebook): CasebookManager {
  const never = (): never => { throw new Error('the demonstration works on one casebook only'); };
  return {
    current: () => casebook, trouble: () => null, file: () => casebook.file, warning: () => null, backups: () => [], outside: () => NOTHING_OUTSIDE, besideBackups: never, noteHead: never,
    openAtStart: never, create: never, openDemonstration: never, closeDemonstration: never, restore: never, backup: never, standing: never, close: never,
  };
}

/** The casebook is made in one go, under a temporary name: a checkpoint would have nowhere to lie. */
const NO_CHECKPOINTS: Checkpoints = { make: () => { throw new Error('the demonstration makes no checkpoints'); }, after: async () => undefined, beforeClosing: async () => undefined };

const NO_UPLOADS: Uploads = createUploads({ folder: () => { throw new Error('the demonstration carries no files'); }, newId: () => '' });

/** Sets up the laboratory with its people; returns their ids by key. */
async function setUp(casebook: Casebook, { laboratory, people }: Scenario, at: string): Promise<Map<string, string>> {
  const { name, address, zone } = laboratory;
  const [first, ...others] = people;
  const firstId = await casebook.laboratory.create(at, { name, address, zone, logo: null, isDemonstration: true, settings: houseSettings.parse({}) }, first!);
  const ids = new Map([[first!.key, firstId]]);
  for (const { key, ...person } of others) {
    const saved = await casebook.people.save({ at, personId: firstId, operation: 'people.save' }, { id: null, ...person, active: true });
    if (!saved.ok) throw new Error(`demonstration: ${person.name} was refused: ${saved.error.message}`);
    ids.set(key, saved.value.id);
  }
  await makeOpenKey(casebook, { at, personId: firstId, operation: 'keys.create' }, sha256(utf8ToBytes(KEY_SEED)));
  return ids;
}

async function play(happening: Happening, stage: Stage): Promise<void> {
  const manager = stage.scenario.people[0]!.key;
  switch (happening.kind) {
    case 'client': {
      const { key, name, address, email, phone, note } = happening.client;
      stage.clients.set(key, (await stage.ask(manager, 'clients.save', { id: null, name, address, email, phone, note })).id);
      return;
    }
    case 'instrument': {
      const { key, name, methods, serial, place, checkEveryDays } = happening.instrument;
      stage.instruments.set(key, (await stage.ask(manager, 'instruments.save', { id: null, name, methods, serial, place, remembers: {}, checkEveryDays, active: true })).id);
      return;
    }
    case 'check': {
      const { by, passed, reference, outcome, measured } = happening.check;
      await stage.ask(by, 'instruments.recordCheck', { instrumentId: under(stage.instruments, happening.instrument, 'instrument'), passed, reference, outcome, measured });
      return;
    }
    case 'sample': {
      const { key, label, truth, basis } = happening.sample;
      stage.samples.set(key, (await stage.ask(manager, 'trials.addSample', { label, truth, basis })).id);
      return;
    }
    case 'trial': {
      const { sample, outcome, examiner, instruments, blind, remark } = happening.trial;
      await stage.ask(manager, 'trials.addByHand', { sampleId: under(stage.samples, sample, 'known sample'), outcome, examinerId: under(stage.people, examiner, 'person'), examinedOn: happening.on, blind, remark, instrumentIds: instruments.map((key) => under(stage.instruments, key, 'instrument')) });
      return;
    }
    case 'intake': return playIntake(stage, happening.case, happening.dueOn);
    case 'step': return playStep(happening.step, { stage, staged: under(stage.cases, happening.case.key, 'case'), caseKey: happening.case.key, target: happening.target });
  }
}

function noteOf(happening: Happening, stage: Stage): string {
  switch (happening.kind) {
    case 'client': return happening.client.name;
    case 'instrument': return happening.instrument.name;
    case 'check': return 'checks of the instruments';
    case 'sample': case 'trial': return 'known samples';
    case 'intake': return `taking in ${happening.case.key}`;
    case 'step': return `${stage.cases.get(happening.case.key)?.number ?? ''} ${happening.target}`.trim();
  }
}

/**
 * What fills an empty casebook with the invented laboratory: everything in it is made through the services, in the order of time,
 * with a clock that says what the scenario says, so that its ledgers are as any other casebook's.
 */
export function createBuildDemonstration({ pool, now, scenario: other }: DemonstrationDeps): BuildDemonstration {
  return async (casebook, progress) => {
    const scenario = other ?? loadScenario();
    const calendar = scenarioCalendar(now(), scenario.laboratory.zone);
    let instant = calendar.instant(scenario.laboratory.opened);
    const scripted = (): Date => instant;
    const people = await setUp(casebook, scenario, instant.toISOString());
    const keyring = createKeyring(() => casebook);
    const services = createServices({
      manager: managerOf(casebook), pool, keyring, checkpoints: NO_CHECKPOINTS, verify: verifyOnThisThread, uploads: NO_UPLOADS, guard: createSessionGuard({ manager: managerOf(casebook), keyring, now: scripted }), now: scripted, newId: createSeededIds(ID_SEED, scripted), host: { version: VERSION, host: 'loopback', hostNote: '' },
    });
    const stage: Stage = { scenario, people, clients: new Map(), instruments: new Map(), samples: new Map(), cases: new Map(), due: calendar.due, ask: askServices(services, scenario, people) };
    const plan = planScenario(scenario, calendar);
    for (const [index, happening] of plan.entries()) {
      instant = happening.at;
      await play(happening, stage);
      progress(index + 1, plan.length, noteOf(happening, stage));
      // Lets the window be served between two happenings.
      await aTurn();
    }
  };
}
