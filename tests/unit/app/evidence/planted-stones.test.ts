import { expect, test } from 'vitest';
import { CONCLUSION_IDS } from '../../../../app/domain/conclusion.ts';
import type { ConclusionId } from '../../../../app/domain/conclusion.ts';
import { DIAMOND, propose, weigh } from './finding-fixtures.ts';
import type { PlantedKind } from './planted-stones.ts';
import { PLANTED_KINDS } from './planted-stones.ts';
import { dice } from './seeded.ts';
import type { Dice } from './seeded.ts';

const SETS_PER_KIND = 1500;

type Counts = Record<ConclusionId, number>;
const none = (): Counts => Object.fromEntries(CONCLUSION_IDS.map((id) => [id, 0])) as Counts;

/** One stone's findings: all of them, or those of some of its methods, some set aside or not counting. */
function proposalOf(kind: PlantedKind, d: Dice, full: boolean): ConclusionId {
  const planted = kind.plant(d);
  const methods = new Set(d.shuffled([...new Set(planted.map((entry) => entry.method))]).slice(0, full ? undefined : 1 + Math.floor(d.next() * 8)));
  const findings = weigh([DIAMOND, ...planted.filter((entry) => methods.has(entry.method))]);
  const kept = full ? findings : findings.map((finding) => (finding.code !== DIAMOND.code && d.chance(0.05) ? { ...finding, state: 'set-aside' as const } : finding));
  return propose(kept).conclusion;
}

function count(kind: PlantedKind, full: boolean, seed: number): Counts {
  const d = dice(seed);
  const counts = none();
  for (let i = 0; i < SETS_PER_KIND; i++) counts[proposalOf(kind, d, full)]++;
  return counts;
}

const FULL = PLANTED_KINDS.map((kind, k) => ({ kind, counts: count(kind, true, 1000 + k) }));
const PARTIAL = PLANTED_KINDS.map((kind, k) => ({ kind, counts: count(kind, false, 2000 + k) }));

const grown = (counts: Counts): number => counts['grown-cvd'] + counts['grown-hpht'] + counts['grown-undetermined-method'];

test('no laboratory-grown set is proposed natural', () => {
  const table = (rows: typeof FULL): string => rows.map(({ kind, counts }) => `${kind.name.padEnd(46)}${CONCLUSION_IDS.filter((id) => id !== 'not-diamond').map((id) => `${id} ${counts[id]}`.padEnd(34)).join('')}`.trimEnd()).join('\n');
  console.log(`All methods, ${SETS_PER_KIND} sets each\n${table(FULL)}\nSome methods, some findings set aside\n${table(PARTIAL)}`);
  for (const { kind, counts } of [...FULL, ...PARTIAL]) if (kind.truth === 'grown') expect(counts.natural, kind.name).toBe(0);
});

test('grown stones without a trap are recognised with all methods', () => {
  for (const { kind, counts } of FULL) if (kind.truth === 'grown' && !kind.trap) expect(grown(counts) / SETS_PER_KIND, kind.name).toBeGreaterThan(0.99);
});

test('a layer on a natural core is never settled with all methods; with few, only where none of them can see it', () => {
  const kind = PLANTED_KINDS.find(({ truth }) => truth === 'composite')!;
  expect(FULL.find((row) => row.kind === kind)!.counts.undetermined).toBe(SETS_PER_KIND);
  const d = dice(77);
  for (let i = 0; i < 300; i++) {
    const blind = kind.plant(d).filter((entry) => !['photoluminescence', 'growth-pattern', 'infrared'].includes(entry.method));
    const sight = d.pick(['photoluminescence', 'growth-pattern', 'infrared'] as const);
    const seeing = kind.plant(d).filter((entry) => entry.method === sight);
    expect(propose(weigh([DIAMOND, ...blind, ...seeing])).conclusion, sight).toBe('undetermined');
    const unseen = propose(weigh([DIAMOND, ...blind]));
    if (unseen.conclusion === 'natural') expect(unseen.missing.join(' ')).toContain('grown layer on a natural core was not looked for');
  }
});

test('natural type Ia stones with all methods are settled, all but a few', () => {
  const typical = FULL.find(({ kind }) => kind.name === 'natural Ia')!;
  // The laboratory wants at most one in twenty sent on.
  expect(typical.counts.natural / SETS_PER_KIND).toBeGreaterThan(0.95);
});

test('no natural set is proposed laboratory-grown, not even the documented look-alikes with all methods', () => {
  for (const { kind, counts } of FULL) if (kind.truth === 'natural') expect(grown(counts), kind.name).toBe(0);
});

test('with few methods a natural look-alike is seldom called grown', () => {
  for (const { kind, counts } of PARTIAL) if (kind.truth === 'natural') expect(grown(counts) / SETS_PER_KIND, kind.name).toBeLessThan(kind.trap ? 0.05 : 0.001);
});
