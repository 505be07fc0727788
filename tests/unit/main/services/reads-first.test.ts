import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contract, type Input, type OperationName, type Output } from '../../../../app/contract/index.ts';
import type { Operation } from '../../../../app/contract/operation.ts';
import { historyFilter } from '../../../../app/contract/history.ts';
import { houseSettings } from '../../../../app/domain/house-settings.ts';
import { program } from '../people/made-program.ts';
import { intake, looseItem, lotItem } from '../../db/intake-samples.ts';

/** Written by the first person and nowhere else: whatever answer holds it tells the first conclusion. */
const SECRET = 'quillfeathered';
const PERIOD = { from: '2020-01-01', to: '2030-12-31' };
const LAB = { name: 'Invented Laboratory', address: 'Nowhere 1', zone: 'Europe/Berlin', logo: null };

type Answer = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly error: { readonly code: string; readonly message: string } };

/** The services by themselves, asked in the name of one person after the other. */
function byPerson() {
  const { manager, services, clock } = program();
  const ask = async (personId: string | null, name: OperationName, input: unknown): Promise<Answer> => {
    const service = services[name] as unknown as (given: unknown, call: object) => Promise<Answer>;
    const answer = await service(contract[name].input.parse(input), { session: { personId }, signal: new AbortController().signal, emit() {} });
    return answer.ok ? { ok: true, value: contract[name].output.parse(answer.value) } : answer;
  };
  const done = async <K extends OperationName>(personId: string | null, name: K, input: Input<K>): Promise<Output<K>> => {
    const answer = await ask(personId, name, input);
    if (!answer.ok) throw new Error(`${name}: ${JSON.stringify(answer.error)}`);
    return answer.value as Output<K>;
  };
  return { manager, ask, done, clock };
}

const asText = (value: unknown): string => JSON.stringify(value, (_key, part: unknown) => (part instanceof Uint8Array ? new TextDecoder('latin1').decode(part) : part));

let made: ReturnType<typeof byPerson>;
let ada: string;
let ben: string;
let stones: { id: string; label: string }[];
let caseId: string;
let lotId: string;
let draftId: string;

const settle = (secondReadsFirst: boolean) => made.done(ada, 'laboratory.save', { ...LAB, settings: { ...houseSettings.parse({}), secondReadsFirst } });
const conclude = (person: string, stone: number) => made.done(person, 'conclusions.conclude', { stoneId: stones[stone]!.id, conclusion: 'out-of-scope', reasons: `The colour is ${SECRET} and not looked at here.`, departure: `It is a ${SECRET} stone.` });
const folder = (person: string, stone: number) => made.done(person, 'stones.folder', { stoneId: stones[stone]!.id });

/** Every operation that reads what could hold a conclusion, with what it is asked. */
const TELLING = (): Partial<Record<OperationName, unknown>> => ({
  'history.stones': { ...historyFilter.parse({}), stage: 'concluded' }, 'stones.folder': { stoneId: stones[0]!.id }, 'reports.list': { caseId }, 'reports.prepare': { caseId }, 'reports.preview': { caseId },
  'cases.bundle': { caseId }, 'cases.get': { caseId }, 'cases.list': {}, 'stones.list': {}, 'audit.list': { caseId: null }, 'bench.today': {}, 'find.anything': { text: SECRET },
  'figures.overTime': PERIOD, 'figures.agreement': PERIOD, 'figures.checks': PERIOD, 'trials.list': PERIOD, 'lots.get': { itemId: lotId }, 'lots.results': { itemId: lotId }, 'weights.ofItem': { itemId: lotId }, 'pieces.get': { itemId: lotId },
  'bundles.writePeriod': { task: 'period', ...PERIOD }, 'reportDrafts.list': { caseId }, 'reportDrafts.open': { draftId }, 'print.receipt': { caseId }, 'print.custody': { caseId, itemId: null },
  'custody.list': { caseId, itemId: null }, 'custody.whereabouts': {}, 'images.ofItem': { itemId: lotId }, 'ledgers.verify': {}, 'bundles.list': {}, 'reportTemplates.desk': {}, 'clients.search': { text: 'Invented' },
});
/** These speak of no stone that somebody concludes on, or hand out bytes that were there before any conclusion. */
const SILENT: readonly OperationName[] = [
  'people.list', 'people.lock', 'people.stay', 'history.choices', 'print.labels', 'print.handOver', 'casebook.status', 'drafts.get', 'drafts.put', 'drafts.remove', 'instruments.list', 'instruments.tryLaser', 'runs.tryFiles',
  'spectra.curves', 'raw.content', 'reports.pdf', 'photographs.content', 'keys.list', 'keys.export', 'batch.analyse', 'work.cancel', 'instruments.tryCalibration', 'instruments.calibrations', 'reports.check', 'houseTexts.list',
  'reportTemplates.list', 'reportTemplates.look', 'authorisations.list', 'pieces.history', 'photographs.look', 'bundles.check', 'bundles.open', 'bundles.case', 'bundles.file', 'reportDrafts.create', 'reportDrafts.save',
  'reportDrafts.discard', 'reportDrafts.look', 'images.facts', 'images.preview', 'images.suggestOutlines', 'checkpoints.list', 'uploads.begin', 'uploads.piece', 'uploads.drop',
];

beforeAll(async () => {
  made = byPerson();
  await made.done(null, 'casebook.create', { ...LAB, person: { name: 'Ada Invented', initials: 'AI', roles: ['manager', 'examiner'], password: 'several invented words' } });
  const casebook = made.manager.current()!;
  ada = (await casebook.people.list())[0]!.id;
  ben = (await made.done(ada, 'people.save', { id: null, name: 'Ben Invented', initials: 'BI', roles: ['manager', 'second-examiner'], active: true })).id;
  await settle(true);
  ({ caseId } = await made.done(ada, 'cases.takeIn', intake([looseItem(), looseItem(), looseItem(), lotItem()])));
  const view = await made.done(ada, 'cases.get', { caseId });
  lotId = view.parcels[0]!.items.find((item) => item.kind === 'lot')!.id;
  await made.done(ada, 'stones.add', { itemId: lotId, mounted: false, position: '', shape: 'round', measurements: '', colourClass: 'colourless', weight: null });
  stones = (await made.done(ada, 'stones.list', {})).rows.toSorted((a, b) => a.label.localeCompare(b.label)).map(({ id, label }) => ({ id, label }));
  ({ draftId } = await made.done(ada, 'reportDrafts.create', { caseId, kind: 'case', subjectId: null }));
  for (let i = 0; i < 4; i++) await conclude(ada, i);
});
afterAll(() => { made.manager.close(); });

describe('while the second person is to read first', () => {
  test('every operation that reads is either asked here or speaks of no conclusion', () => {
    const reading = (Object.keys(contract) as OperationName[]).filter((name) => !(contract[name] as Operation).changes);
    expect([...Object.keys(TELLING()), ...SILENT].toSorted()).toEqual(reading.toSorted());
  });

  test('no answer to them holds the first conclusion, and those to the first person do', async () => {
    const told: string[] = [];
    for (const [name, input] of Object.entries(TELLING()) as [OperationName, unknown][]) {
      const toBen = await made.ask(ben, name, input);
      const text = toBen.ok ? asText(toBen.value) : '';
      expect(text.includes(SECRET), `${name}: ${text.slice(Math.max(0, text.indexOf(SECRET) - 80), text.indexOf(SECRET) + 20)}`).toBe(false);
      expect(text, name).not.toContain('"conclusion":"out-of-scope"');
      if (!toBen.ok) expect([name, toBen.error.code]).toEqual([expect.stringMatching(/^(cases\.bundle|bundles\.writePeriod)$/), 'refused']);
      const toAda = await made.ask(ada, name, input);
      const all = toAda.ok ? asText(toAda.value) : '';
      if (all.includes(SECRET) || all.includes('"conclusion":"out-of-scope"')) told.push(name);
    }
    expect(told.toSorted()).toEqual(['audit.list', 'cases.get', 'history.stones', 'pieces.get', 'reports.prepare', 'stones.folder', 'stones.list']);
    expect((await made.ask(ada, 'cases.bundle', { caseId })).ok).toBe(true);
  });

  test('that there is one, by whom and when is told, in words', async () => {
    const { withheld, conclusions, stone, reading } = await folder(ben, 0);
    expect(withheld).toMatchObject({ by: 'Ada Invented', byId: ada });
    expect([conclusions, stone.conclusion, stone.stage, reading]).toEqual([[], null, 'concluded', null]);
    expect((await made.done(ben, 'bench.today', {})).toConfirm).toMatchObject([{ conclusion: null }, { conclusion: null }, { conclusion: null }, { conclusion: null }]);
    const { missing, model } = await made.done(ben, 'reports.prepare', { caseId });
    expect(missing).toContain(`${stones[0]!.label} is concluded; shown to you after you have stated yours.`);
    expect(asText(model)).toContain('"withheld":true');
    expect((await made.done(ben, 'audit.list', { caseId: null })).rows.filter((row) => row.operation === 'conclusions.conclude').map((row) => row.content)).toContain('{"withheld":"concluded; shown after you have stated yours"}');
  });

  test('no filter and no word finds it, and the book of a lot does not take it over', async () => {
    const counted = async (person: string, change: object) => (await made.done(person, 'history.stones', { ...historyFilter.parse({}), ...change })).total;
    expect([await counted(ben, { conclusion: 'out-of-scope' }), await counted(ada, { conclusion: 'out-of-scope' })]).toEqual([0, 4]);
    expect([await counted(ben, { sentFurther: false }), await counted(ben, { text: SECRET }), await counted(ada, { text: SECRET })]).toEqual([0, 0, 0]);
    const lotStone = stones.find(({ label }) => label.startsWith('D'))!;
    expect(await made.ask(ada, 'lots.enter', { itemId: lotId, source: 'folder', note: '', entries: [{ number: 1, outcome: 'undetermined', was: null, stoneId: lotStone.id }] })).toMatchObject({ ok: false, error: { code: 'refused', message: `${lotStone.label} is concluded, and a second person has not answered yet.` } });
  });

  test('an answer is refused before they have stated theirs; what they stated then stands, and is a second reading', async () => {
    const { withheld } = await folder(ben, 0);
    const { conclusionId } = withheld!;
    expect(await made.ask(ben, 'conclusions.confirm', { conclusionId, agrees: true, reason: '' })).toMatchObject({ ok: false, error: { code: 'refused' } });
    expect(await made.ask(ada, 'conclusions.read', { conclusionId, outcome: 'natural' })).toMatchObject({ ok: false, error: { code: 'conflict' } });
    expect((await made.done(ben, 'conclusions.read', { conclusionId, outcome: 'undetermined' })).conclusion).toBe('out-of-scope');
    expect(await made.ask(ben, 'conclusions.read', { conclusionId, outcome: 'out-of-scope' })).toMatchObject({ ok: false, error: { code: 'conflict' } });
    const seen = await folder(ben, 0);
    expect([seen.withheld, seen.conclusions.length, seen.reading?.outcome]).toEqual([null, 1, 'undetermined']);
    expect(await made.ask(ben, 'conclusions.confirm', { conclusionId, agrees: true, reason: '' })).toMatchObject({ ok: false, error: { code: 'invalid-input' } });
    const answered = await made.done(ben, 'conclusions.confirm', { conclusionId, agrees: false, reason: 'It is colourless.', outcome: 'out-of-scope' });
    expect(answered.confirmation).toMatchObject({ agrees: false, outcome: 'undetermined', readFirst: true });
    expect((await made.done(ada, 'figures.agreement', PERIOD)).readFirst).toMatchObject({ n: 1, observed: { count: 0 } });
    expect((await made.done(ben, 'find.anything', { text: SECRET })).map(({ title }) => title)).toEqual([`C-2026-0001 ${stones[0]!.label}`]);
  });

  test('who asks to see it without stating theirs confirms, and reads nothing', async () => {
    const { conclusionId } = (await folder(ben, 1)).withheld!;
    await made.done(ben, 'conclusions.read', { conclusionId, outcome: null });
    expect((await made.done(ben, 'conclusions.confirm', { conclusionId, agrees: true, reason: '' })).confirmation).toMatchObject({ agrees: true, readFirst: false });
    const { readFirst, seen } = await made.done(ada, 'figures.agreement', PERIOD);
    expect([readFirst.n, seen.n]).toEqual([1, 1]);
  });

  test('switched off, it is shown and found; switched on again, what could be seen meanwhile is no reading', async () => {
    await settle(false);
    expect((await folder(ben, 2)).conclusions).toHaveLength(1);
    expect((await made.done(ben, 'find.anything', { text: SECRET }))).toHaveLength(4);
    await settle(true);
    const { conclusions, withheld } = await folder(ben, 2);
    expect([conclusions.length, withheld]).toEqual([1, null]);
    expect(await made.ask(ben, 'conclusions.read', { conclusionId: conclusions[0]!.id, outcome: 'natural' })).toMatchObject({ ok: false, error: { code: 'conflict' } });
    expect((await made.done(ben, 'conclusions.confirm', { conclusionId: conclusions[0]!.id, agrees: true, reason: '' })).confirmation).toMatchObject({ readFirst: false });
    // A new conclusion on a stone of which an earlier one was seen is withheld from nobody: it would be no second reading.
    await made.done(ben, 'conclusions.confirm', { conclusionId: (await folder(ben, 3)).conclusions[0]!.id, agrees: false, reason: 'Look again.' });
    await conclude(ada, 3);
    expect((await folder(ben, 3)).withheld).toBeNull();
  });

  test('a window cannot say since when; the ledgers still agree with the records', async () => {
    await made.done(ada, 'laboratory.save', { ...LAB, settings: { ...houseSettings.parse({}), secondReadsFirst: true, secondReadsFirstSince: '2001-01-01T00:00:00.000Z' } });
    expect((await made.manager.current()!.laboratory.get())!.settings.secondReadsFirstSince).toMatch(/^2026/);
    expect((await made.done(ada, 'ledgers.verify', {})).parts.filter((part) => !part.sound)).toEqual([]);
  });
});
