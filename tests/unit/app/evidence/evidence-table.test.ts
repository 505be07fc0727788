import { expect, test } from 'vitest';
import { COLOUR_CLASSES } from '../../../../app/domain/colour-class.ts';
import { STRENGTHS } from '../../../../app/domain/finding.ts';
import { findingsFromObservation } from '../../../../app/evidence/findings-from-observation.ts';
import { EVIDENCE_TABLE, evidenceRowOf, sourceOfCell } from '../../../../app/evidence/evidence-table.ts';
import { gradesOf } from '../../../../app/evidence/grades-of.ts';
import { grades, HYPOTHESIS_IDS } from '../../../../app/evidence/hypothesis.ts';
import { METHOD_OUTCOMES } from '../../../../app/evidence/method-outcomes.ts';
import { capWeight } from '../../../../app/evidence/rules/cap-weight.ts';
import { BROAD_BANDS } from '../../../../app/reference/broad-bands.ts';
import { OPTICAL_CENTRES } from '../../../../app/reference/optical-centres.ts';
import { SIMULANTS } from '../../../../app/reference/reference-lines.ts';
import { centre, fact, weigh } from './finding-fixtures.ts';
import { EVERY_OBSERVATION } from './every-observation.ts';

const value = (grade: number | 'excludes'): number => (grade === 'excludes' ? -4 : grade);
const rank = (strength: (typeof STRENGTHS)[number]): number => STRENGTHS.indexOf(strength);

test('every row has an id of its own, a code, a source for each cell and its counter-example', () => {
  expect(new Set(EVIDENCE_TABLE.map((row) => row.id)).size).toBe(EVIDENCE_TABLE.length);
  const codes = EVIDENCE_TABLE.flatMap((row) => row.codes);
  expect(new Set(codes).size).toBe(codes.length);
  for (const row of EVIDENCE_TABLE) {
    expect(row.codes.length, row.id).toBeGreaterThan(0);
    expect(row.caution.length, row.id).toBeGreaterThan(5);
    for (const id of HYPOTHESIS_IDS) expect(sourceOfCell(row, id).length, `${row.id} ${id}`).toBeGreaterThan(5);
  }
});

test('what a row comes to in one word follows from its grades', () => {
  for (const { id, supports, most, grades: g } of EVIDENCE_TABLE) {
    const [nu, nt, ca, ct, hp, si] = HYPOTHESIS_IDS.map((one) => value(g[one])) as [number, number, number, number, number, number];
    const natural = Math.max(nu, nt);
    const cvd = Math.max(ca, ct);
    const grown = Math.max(cvd, hp);
    if (most === 'neutral') expect(supports, id).toBe('none');
    else expect(supports, id).not.toBe('none');
    if (supports === 'natural') expect(natural, id).toBeGreaterThan(grown);
    if (supports === 'grown' || supports === 'grown-cvd' || supports === 'grown-hpht') expect(grown, id).toBeGreaterThan(natural);
    if (supports === 'grown-cvd') expect(cvd, id).toBeGreaterThan(hp);
    if (supports === 'grown-hpht') expect(hp, id).toBeGreaterThan(cvd);
    if (supports === 'treatment') expect(Math.max(nt, ct), id).toBeGreaterThan(Math.max(nu, ca));
    if (supports === 'diamond') expect(si, id).toBeLessThanOrEqual(0);
    if (supports === 'not-diamond') expect(si, id).toBeGreaterThan(Math.max(natural, grown));
    // Strong and more needs at least two steps somewhere; identity rows are proofs of another kind.
    if (most === 'strong' && supports !== 'diamond') expect(Math.max(natural, grown, si), id).toBeGreaterThanOrEqual(2);
  }
});

test('every optical centre, band, imitation and observation has its row, which allows it no less than its maker gave it', () => {
  const facts = [
    ...OPTICAL_CENTRES.map((entry) => centre(entry.id)),
    ...BROAD_BANDS.map((band) => fact(`band:${band.id}`, band.supports, band.strength, 'absorption')),
    ...SIMULANTS.map((simulant) => fact(`simulant:${simulant.id}`, 'not-diamond', 'diagnostic', 'raman')),
    ...COLOUR_CLASSES.flatMap((colourClass) => EVERY_OBSERVATION.flatMap((one) => findingsFromObservation(one, { colourClass, mounted: false, others: EVERY_OBSERVATION.filter((other) => other.method.startsWith('fluorescence')).slice(0, 40) }))),
  ];
  for (const one of facts) {
    const row = evidenceRowOf(one.code);
    expect(row, one.code).toBeDefined();
    expect(rank(one.strength), one.code).toBeGreaterThanOrEqual(rank(row!.most));
    if (one.strength !== 'neutral') expect(one.supports, one.code).toBe(row!.supports);
  }
});

test('every code that the analyses write has its row', () => {
  const families = ['natural-companions', 'nickel-nitrogen', 'cobalt', 'nickel-grown', 'cvd-533-563'].map((one) => `family:${one}`);
  const infrared = ['lattice', 'platelet', '3107', '3123', 'boron', ...['IaA', 'IaB', 'IaAB', 'Ib', 'IIa', 'IIb', 'not-determined'].map((type) => `type-${type}`)].map((one) => `infrared:${one}`);
  const others = ['diamond-line:present', 'diamond-line:absent', 'diamond-line:masked', 'centres:none', 'ambiguous:NV0+RAMAN', 'ultraviolet:edge', 'ultraviolet:opaque', 'ultraviolet:transparent', 'ultraviolet:between'];
  for (const code of [...families, ...infrared, ...others]) expect(evidenceRowOf(code), code).toBeDefined();
  for (const outcomes of Object.values(METHOD_OUTCOMES)) for (const outcome of outcomes) expect(evidenceRowOf(outcome.code), outcome.code).toBeDefined();
});

test('a finding weighs no more than its row, whatever it claims, and less where it was made less well', () => {
  const [claimed] = weigh([fact('centre:NV-', 'natural', 'diagnostic', 'photoluminescence')]).map(capWeight);
  expect(claimed).toMatchObject({ strength: 'neutral', supports: 'none' });
  const [unknown] = weigh([fact('no:such-code', 'natural', 'diagnostic', 'microscopy')]).map(capWeight);
  expect(unknown).toMatchObject({ strength: 'neutral', supports: 'none' });
  expect(gradesOf(centre('N3'))['natural-untreated']).toBe(3);
  expect(gradesOf({ ...centre('N3'), strength: 'supporting' })).toMatchObject({ 'natural-untreated': 1, 'hpht-grown': -1, 'not-diamond': -1 });
  expect(gradesOf({ ...centre('N3'), strength: 'neutral' })['natural-untreated']).toBe(0);
});

test('a row that is written wrongly is refused at once', () => {
  expect(() => grades('+ + + + +')).toThrow();
  expect(() => grades('+ + + + + ?')).toThrow();
});
