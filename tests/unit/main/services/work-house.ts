import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import type { IntakeInput } from '../../../../app/contract/cases.ts';
import { contract, type Input, type OperationName, type Output } from '../../../../app/contract/index.ts';
import { houseSettings } from '../../../../app/domain/house-settings.ts';
import type { Spectrum } from '../../../../app/spectra/spectrum.ts';
import { openCasebook, type Casebook } from '../../../../db/open-casebook.ts';
import type { Service } from '../../../../main/services/service.ts';
import { createKeyring } from '../../../../main/keys/keyring.ts';
import type { Signer } from '../../../../main/keys/signer.ts';
import { makeOpenKey } from '../../../../main/keys/make-open-key.ts';
import { createImageServices } from '../../../../main/services/images.ts';
import { createPieceServices } from '../../../../main/services/pieces.ts';
import { createWorkServices } from '../../../../main/services/work-services.ts';
import { createInlinePool } from '../../../../main/workers/inline-pool.ts';
import type { TaskPool } from '../../../../main/workers/task-pool.ts';

const MIGRATIONS = fileURLToPath(new URL('../../../../db/migrations', import.meta.url));

type WorkServices = ReturnType<typeof createWorkServices> & ReturnType<typeof createPieceServices> & ReturnType<typeof createImageServices>;
type WorkOperation = keyof WorkServices & OperationName;
export type Answer<K extends OperationName> = Awaited<ReturnType<Service<K>>>;

/** A small invented laboratory in a casebook of its own, with two persons and a clock that the test moves. */
export type House = {
  readonly casebook: Casebook;
  readonly examiner: string;
  readonly colleague: string;
  readonly events: unknown[];
  /** Moves the clock on. */
  pass(minutes: number): void;
  now(): string;
  /** Calls a service as a host does, input and output through the contract, in someone's name. */
  as<K extends WorkOperation>(person: string | null, name: K, input: Input<K>, signal?: AbortSignal): Promise<Answer<K>>;
  /** The same where it must succeed. */
  done<K extends WorkOperation>(person: string, name: K, input: Input<K>): Promise<Output<K>>;
  takeIn(change?: Partial<IntakeInput>): Promise<{ caseId: string; stones: Record<string, string>; items: Record<string, string> }>;
  close(): void;
};

const stone = (shape: string, weight: number | null): IntakeInput['parcels'][number]['items'][number]['stones'][number] =>
  ({ position: weight === null ? 'centre' : '', shape, measurements: '', colourClass: 'colourless', weight });

/** A loose stone A, a ring B with a closed back, a brooch C with an open back. */
export const INTAKE: IntakeInput = {
  client: { name: 'Invented Client', address: '1 Nowhere Lane', email: '', phone: '', note: '' },
  asks: 'Natural or grown?', dueOn: null, remarks: '', place: 'Safe 1', broughtBy: 'the client',
  parcels: [{
    sealNumber: 'T-1', remarks: '',
    items: [
      { kind: 'loose', declared: 'one round stone', declaredValue: '', grossWeight: 4120, weightUnit: 'ct', count: 1, setting: null, condition: '', stones: [stone('round brilliant', 4120)], photographs: [] },
      { kind: 'jewellery', declared: 'a ring', declaredValue: '', grossWeight: 531000, weightUnit: 'g', count: null, setting: 'closed-back', condition: '', stones: [stone('cushion', null)], photographs: [] },
      { kind: 'jewellery', declared: 'a brooch', declaredValue: '', grossWeight: 731000, weightUnit: 'g', count: null, setting: 'open-back', condition: '', stones: [stone('old cut', null)], photographs: [] },
    ],
  }],
};

export async function openHouse(options: { address?: string; pool?: TaskPool; signer?: Signer } = {}): Promise<House> {
  const folder = mkdtempSync(path.join(tmpdir(), 'culet-work-'));
  let instant = Date.parse('2026-11-25T09:00:00.000Z');
  let ids = 0;
  const now = (): Date => new Date(instant);
  const newId = (): string => `id-${String(++ids).padStart(6, '0')}`;
  const opened = openCasebook({ file: path.join(folder, 'test.culet'), mustExist: false, migrationsFolder: MIGRATIONS, now, newId });
  if (!opened.ok) throw new Error(opened.error.message);
  const casebook = opened.value;
  const at = (): string => now().toISOString();
  const examiner = await casebook.laboratory.create(at(), { name: 'Invented Laboratory', address: options.address ?? '2 Nowhere Lane', zone: 'Europe/Berlin', logo: null, isDemonstration: false, settings: houseSettings.parse({}) },
    { name: 'Ada Invented', initials: 'AI', roles: ['examiner', 'manager'] });
  const colleague = await casebook.people.save({ at: at(), personId: examiner, operation: 'people.save' }, { id: null, name: 'Ben Invented', initials: 'BI', roles: ['second-examiner', 'appraiser'], active: true });
  if (!colleague.ok) throw new Error(colleague.error.message);
  await makeOpenKey(casebook, { at: at(), personId: examiner, operation: 'keys.create' }, new Uint8Array(32).fill(7));
  const events: unknown[] = [];
  const deps = { now, newId, casebook: () => casebook, signer: options.signer ?? createKeyring(() => casebook), pool: options.pool ?? createInlinePool() };
  const services = { ...createWorkServices(deps), ...createPieceServices(deps), ...createImageServices(deps) };

  const as: House['as'] = async (person, name, input, signal) => {
    const service = services[name] as unknown as Service<typeof name>;
    const parsed = contract[name].input.parse(input) as Parameters<typeof service>[0];
    const answer = await service(parsed, { session: { personId: person }, signal: signal ?? new AbortController().signal, emit: (event) => events.push(event) });
    if (answer.ok) contract[name].output.parse(answer.value);
    return answer;
  };
  return {
    casebook, examiner, colleague: colleague.value.id, events, as,
    pass(minutes) { instant += minutes * 60_000; },
    now: at,
    async done(person, name, input) {
      const answer = await as(person, name, input);
      if (!answer.ok) throw new Error(`${name}: ${answer.error.message} ${JSON.stringify(answer.error.fields ?? {})}`);
      return answer.value;
    },
    async takeIn(change = {}) {
      const taken = await casebook.cases.takeIn({ at: at(), personId: examiner, operation: 'cases.takeIn' }, { ...INTAKE, ...change });
      if (!taken.ok) throw new Error(JSON.stringify(taken.error));
      const view = await casebook.cases.get(taken.value.caseId);
      const items = view!.parcels.flatMap((parcel) => parcel.items);
      return {
        caseId: taken.value.caseId,
        items: Object.fromEntries(items.map((item) => [item.label, item.id])),
        stones: Object.fromEntries(items.flatMap((item) => item.stones).map((entry) => [entry.label, entry.id])),
      };
    },
    close() {
      casebook.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** A curve as a JCAMP-DX file with pairs of values; without `xUnits` the file does not say its unit. */
export function jcampOf(title: string, curve: Spectrum, xUnits: string | null, dataType = 'RAMAN SPECTRUM'): Uint8Array {
  const header = [`##TITLE=${title}`, '##JCAMP-DX=4.24', `##DATA TYPE=${dataType}`, '##ORIGIN=invented', '##OWNER=invented',
    ...(xUnits === null ? [] : [`##XUNITS=${xUnits}`]), `##YUNITS=${curve.yUnit === 'absorbance' ? 'ABSORBANCE' : 'COUNTS'}`, '##XFACTOR=1', '##YFACTOR=1', `##FIRSTX=${curve.x[0]}`, `##LASTX=${curve.x.at(-1)}`, `##NPOINTS=${curve.x.length}`, '##XYPOINTS=(XY..XY)'];
  const points = Array.from(curve.x, (x, index) => `${x}, ${curve.y[index]}`);
  return new TextEncoder().encode([...header, ...points, '##END=', ''].join('\n'));
}

/** The same as columns of text without any header. */
export const columnsOf = (curve: Spectrum): Uint8Array => new TextEncoder().encode(Array.from(curve.x, (x, index) => `${x}\t${curve.y[index]}`).join('\r\n'));
