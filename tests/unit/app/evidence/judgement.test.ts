import { concludeDocument, concludeFromDocument } from '../../../../app/evidence/conclude-document.ts';
import { describe, expect, test } from 'vitest';
import { proposal as proposalSchema } from '../../../../app/evidence/proposal.ts';
import { rederive } from '../../../../app/evidence/rederive.ts';
import { RULE_BOOK, RULE_IDS } from '../../../../app/evidence/rules/rule-book.ts';
import { centre, DIAMOND, fact, LOOSE, propose, proposeFor, weigh } from './finding-fixtures.ts';

const AGGREGATES = fact('infrared:type-IaAB', 'natural', 'strong', 'infrared');
const ONLY_A = fact('infrared:type-IaA', 'natural', 'strong', 'infrared');
const CAPE = centre('N3', 'absorption');
const ZONING = fact('pattern:octahedral-zoning', 'natural', 'strong', 'growth-pattern');
const NETWORK = fact('pattern:dislocation-network', 'natural', 'strong', 'growth-pattern');
const BANDED = fact('strain:banded', 'natural', 'supporting', 'crossed-polarisers');
const MOTTLED = fact('strain:mottled', 'natural', 'supporting', 'crossed-polarisers');
const BLUE_LONG = fact('glow:long-over-short', 'natural', 'supporting', 'fluorescence-long-wave');
const SHORT_OVER_LONG = fact('glow:short-over-long', 'grown', 'supporting', 'fluorescence-short-wave');
const STRIATIONS = fact('pattern:striations', 'grown-cvd', 'strong', 'growth-pattern');
const TYPE_IIA = fact('infrared:type-IIa', 'none', 'neutral', 'infrared');
const OPAQUE = fact('ultraviolet:opaque', 'natural', 'supporting', 'ultraviolet-transmission');

test('each rule can be read aloud: one sentence', () => {
  for (const id of RULE_IDS) expect(RULE_BOOK[id], id).toMatch(/^[A-Z].*\.$/);
});

describe('a grown layer on a natural core', () => {
  test('natural is not stated before the skin was looked at', () => {
    const bulk = proposeFor(CAPE, AGGREGATES, BANDED);
    expect(bulk).toMatchObject({ conclusion: 'undetermined', rule: 'layer-not-looked-for' });
    expect(bulk.nextTests.slice(0, 2).map((next) => next.method).sort()).toEqual(['growth-pattern', 'photoluminescence']);
    expect(proposeFor(CAPE, AGGREGATES, ZONING).conclusion).toBe('natural');
    expect(proposeFor(centre('N3'), AGGREGATES).conclusion).toBe('natural');
  });
  test('a pattern alone is not enough of a look: that of the core can hide a layer; infrared beside it is', () => {
    expect(proposeFor(CAPE, ZONING, BANDED).rule).toBe('layer-not-looked-for');
    expect(proposeFor(CAPE, ZONING, BANDED, AGGREGATES).conclusion).toBe('natural');
  });
  test.each(['centre:SIV', 'centre:CVD596', 'pattern:layer-boundary', 'infrared:3123'])('%s, however weak, beside natural bulk raises the suspicion of a layer', (code) => {
    const weak = fact(code, code === 'centre:SIV' ? 'grown' : 'grown-cvd', 'supporting', code.startsWith('pattern') ? 'growth-pattern' : code.startsWith('infrared') ? 'infrared' : 'photoluminescence');
    expect(proposeFor(centre('N3'), AGGREGATES, CAPE, weak)).toMatchObject({ conclusion: 'undetermined', rule: 'layer-suspected' });
  });
  test('a spectrum in which nothing stands out, or a pattern that was not seen, has not looked', () => {
    expect(proposeFor(CAPE, AGGREGATES, fact('centres:none', 'none', 'neutral', 'photoluminescence'), fact('pattern:none-seen', 'none', 'neutral', 'growth-pattern')).rule).toBe('layer-not-looked-for');
  });
  test('GR1 in the luminescence can hide silicon-vacancy: the pattern is asked for', () => {
    expect(proposeFor(centre('N3'), AGGREGATES, centre('GR1')).rule).toBe('layer-not-looked-for');
    expect(proposeFor(centre('N3'), AGGREGATES, centre('GR1'), ZONING).conclusion).toBe('natural');
  });
  test('a look with an instrument out of order is none', () => {
    const findings = [...weigh([DIAMOND, CAPE, AGGREGATES]), ...weigh([ZONING], { id: 'z', counts: false })];
    expect(propose(findings)).toMatchObject({ conclusion: 'undetermined', rule: 'layer-not-looked-for' });
  });
});

describe('documented look-alikes', () => {
  test('N3 with A aggregates alone could have been annealed in a press; B aggregates, pattern or strain clear it', () => {
    expect(proposeFor(centre('N3'), ONLY_A, OPAQUE)).toMatchObject({ conclusion: 'undetermined', rule: 'documented-together' });
    expect(proposeFor(centre('N3'), ONLY_A, BANDED).conclusion).toBe('natural');
    expect(proposeFor(centre('N3'), ONLY_A, ZONING).conclusion).toBe('natural');
    expect(proposeFor(centre('N3'), AGGREGATES).conclusion).toBe('natural');
  });
  test('a blue glow with a network and a mottle could be CVD-grown', () => {
    expect(proposeFor(NETWORK, BLUE_LONG, MOTTLED)).toMatchObject({ conclusion: 'undetermined', rule: 'documented-together' });
    expect(proposeFor(NETWORK, BLUE_LONG, fact('strain:tatami', 'natural', 'supporting', 'crossed-polarisers'), TYPE_IIA).conclusion).toBe('natural');
  });
  test('nickel with a blue after-glow and a stronger short-wave glow could be natural type IIa', () => {
    const after = fact('afterglow:blue', 'grown-hpht', 'supporting', 'phosphorescence');
    expect(proposeFor(centre('NI883'), after, SHORT_OVER_LONG)).toMatchObject({ conclusion: 'undetermined', rule: 'documented-together' });
    expect(proposeFor(centre('NI883'), after, fact('pattern:cuboctahedral-sectors', 'grown-hpht', 'strong', 'growth-pattern')).conclusion).toBe('grown-hpht');
  });
});

test('infrared aggregates and opacity at 254 nm are one witness: the same nitrogen', () => {
  expect(proposeFor(AGGREGATES, OPAQUE, BLUE_LONG).conclusion).toBe('undetermined');
});

test('3107 has weight beside aggregated nitrogen only', () => {
  const h3107 = fact('infrared:3107', 'natural', 'supporting', 'infrared');
  const tatami = fact('strain:tatami', 'natural', 'supporting', 'crossed-polarisers');
  expect(proposeFor(NETWORK, tatami, h3107, TYPE_IIA).conclusion).toBe('undetermined');
  expect(proposeFor(centre('N3'), BANDED, h3107, AGGREGATES).chain!.find((link) => link.code === 'infrared:3107')!.strength).toBe('supporting');
  expect(proposeFor(NETWORK, tatami, h3107, TYPE_IIA).chain!.find((link) => link.code === 'infrared:3107')!.strength).toBe('neutral');
});

describe('treatment', () => {
  const h2 = centre('H2', 'absorption');
  test('one line beside aggregated nitrogen is a question: natural stands, and what would answer it is named', () => {
    const result = proposeFor(centre('N3'), AGGREGATES, h2);
    expect(result.conclusion).toBe('natural');
    expect(result.reasons.join(' ')).toContain('a question and no verdict');
    expect(result.against.join(' ')).toContain('H2 seen');
    expect(result.nextTests.map((next) => next.method)).toEqual(['photoluminescence', 'infrared', 'absorption']);
  });
  test('two lines, a sign under the microscope, or one line in type IIa leave the screening', () => {
    expect(proposeFor(centre('N3'), AGGREGATES, h2, centre('595', 'absorption')).conclusion).toBe('out-of-scope');
    expect(proposeFor(centre('N3'), AGGREGATES, fact('seen:graphitised-fracture', 'treatment', 'supporting', 'microscopy')).conclusion).toBe('out-of-scope');
    expect(proposeFor(centre('N3'), AGGREGATES, centre('595', 'absorption'), centre('GR1')).conclusion).toBe('out-of-scope');
    const typeTwo = proposeFor(NETWORK, fact('strain:tatami', 'natural', 'supporting', 'crossed-polarisers'), centre('DEF579'), fact('infrared:type-IIa', 'none', 'neutral', 'infrared'), h2);
    expect(typeTwo).toMatchObject({ conclusion: 'out-of-scope', rule: 'treatment-suspected' });
  });
});

describe('a mounted stone', () => {
  test('what the mount took away is named, and that the conclusion says less', () => {
    const stone = { mounted: true, setting: 'closed-back', colourClass: 'colourless' } as const;
    const result = propose(weigh([DIAMOND, centre('N3'), ZONING]), { stone });
    expect(result.conclusion).toBe('natural');
    expect(result.missing.join(' ')).toMatch(/Not possible on this mounted stone \(closed back\).*the conclusion says less than one on a loose stone/);
    expect(result.missing.join(' ')).toContain('treatment was not looked for');
    expect(propose(weigh([DIAMOND, centre('N3'), ZONING])).missing.join(' ')).not.toContain('mounted');
  });
  test('what was read through a closed setting is doubtful and proves nothing; through an open one it counts', () => {
    const about = (setting: 'open-back' | 'closed-back' | null) => concludeFromDocument(concludeDocument.parse({
      stone: { mounted: true, setting, colourClass: 'colourless' }, findings: [{ code: 'diamond-line:present' }, { code: 'centre:N3' }, { code: 'infrared:type-IaAB' }, { code: 'infrared:platelet' }],
    })).proposal;
    expect(about('open-back').conclusion).toBe('natural');
    expect(about('open-back').missing.join(' ')).not.toContain('doubtful');
    for (const setting of ['closed-back', null] as const) {
      const { conclusion, missing, chain, counted } = about(setting);
      expect(conclusion).toBe('undetermined');
      expect(missing.join(' ')).toMatch(/infrared.*doubtful, because no light passes/);
      expect(chain!.filter((link) => link.role === 'ignored').map((link) => link.rule)).toEqual(['setting-allows', 'setting-allows']);
      expect(counted).toHaveLength(2);
    }
  });
  test('a small stone is told which tests it is too small for', () => {
    const result = propose(weigh([DIAMOND, centre('N3')]), { stone: { ...LOOSE, weightCt: 0.008 } });
    expect(result.missing.join(' ')).toContain('too small for absorption, infrared');
    expect(result.nextTests.map((next) => next.method)).not.toContain('infrared');
  });
});

describe('the explanation', () => {
  test('names for each finding its row, its weight, its part and the rule', () => {
    const { chain } = proposeFor(centre('N3'), AGGREGATES, BANDED, SHORT_OVER_LONG, centre('NV0'));
    expect(chain!.map(({ code, role }) => [code, role])).toEqual([
      ['centre:N3', 'decides'], ['infrared:type-IaAB', 'decides'], ['diamond-line:present', 'adds'], ['strain:banded', 'adds'], ['glow:short-over-long', 'against'], ['centre:NV0', 'noted'],
    ]);
    expect(chain![0]).toMatchObject({ row: 'n3', strength: 'strong', rule: 'two-strong', grades: { 'natural-untreated': 3, 'cvd-as-grown': -2 } });
    expect(chain![0]!.sentence).toContain('A nature needs two strong findings');
  });
  test('what does not count is there with its rule', () => {
    const { chain } = propose([...weigh([DIAMOND]), ...weigh([ZONING], { id: 'z', counts: false }), ...weigh([AGGREGATES], { id: 'a', state: 'set-aside' }), ...weigh([fact('no:such', 'natural', 'strong', 'microscopy')], { id: 'n' })]);
    expect(chain!.filter((link) => link.role === 'ignored').map((link) => link.rule).sort()).toEqual(['instrument-in-order', 'not-in-table', 'set-aside']);
  });
  test('says how each hypothesis stands', () => {
    const standing = Object.fromEntries(proposeFor(centre('N3'), AGGREGATES).hypotheses!.map((one) => [one.id, one.standing]));
    expect(standing).toEqual({ 'natural-untreated': 'leading', 'natural-treated': 'open', 'cvd-as-grown': 'unlikely', 'cvd-treated': 'unlikely', 'hpht-grown': 'unlikely', 'not-diamond': 'excluded' });
    const none = Object.fromEntries(propose([]).hypotheses!.map((one) => [one.id, one.standing]));
    expect(new Set(Object.values(none))).toEqual(new Set(['open']));
  });
  test('boron in a stone called natural is said to be unusual', () => {
    const result = proposeFor(NETWORK, centre('B648'), fact('strain:tatami', 'natural', 'supporting', 'crossed-polarisers'), fact('infrared:type-IIb', 'none', 'neutral', 'infrared'));
    expect(result.conclusion).toBe('natural');
    expect(result.against.join(' ')).toContain('Unusual for this conclusion: infrared:type-IIb seen');
  });
});

describe('next tests', () => {
  test('the list falls in what the tests would settle, and each has its caution', () => {
    const { nextTests } = proposeFor(centre('SIV'));
    expect(nextTests.length).toBeGreaterThan(4);
    nextTests.forEach((next, i) => {
      expect(next.caution, next.method).toBeTruthy();
      const before = nextTests[i - 1];
      if (before !== undefined) expect(before.settles! * 100 + before.bits!).toBeGreaterThanOrEqual(next.settles! * 100 + next.bits! - 0.002);
    });
  });
  test('a type II stone is not sent to look for nitrogen', () => {
    const methods = proposeFor(fact('infrared:type-IIa', 'none', 'neutral', 'infrared')).nextTests.map((next) => next.method);
    expect(methods).not.toContain('absorption');
    expect(methods).not.toContain('ultraviolet-transmission');
    expect(methods[0]).toBe('growth-pattern');
  });
});

describe('a stored conclusion', () => {
  const made = proposeFor(centre('SIV'), STRIATIONS, SHORT_OVER_LONG);
  const stored = proposalSchema.parse(JSON.parse(JSON.stringify(made)));
  test('keeps versions and can be made again to the letter', () => {
    expect(stored.table).toMatch(/^evidence table \d+\.\d+$/);
    expect(rederive(stored)).toEqual({ state: 'same' });
  });
  test('an altered finding, grade or conclusion is noticed', () => {
    expect(rederive({ ...stored, conclusion: 'natural' }).state).toBe('differs');
    const altered = { ...stored, basis: { ...stored.basis!, findings: stored.basis!.findings.filter((finding) => finding.code !== 'pattern:striations') } };
    expect(rederive(altered)).toMatchObject({ state: 'differs', now: { conclusion: 'undetermined' } });
  });
  test('of other versions it says so, and what the present rules make of the same findings', () => {
    expect(rederive({ ...stored, table: 'evidence table 2025.9' })).toMatchObject({ state: 'other-versions', now: { conclusion: 'grown-cvd' } });
    const { basis: _basis, ...older } = stored;
    expect(rederive(older)).toEqual({ state: 'no-basis' });
  });
});

describe('two persons who disagree', () => {
  test('send a settled stone to further testing, with a witness of another kind first', () => {
    const findings = weigh([DIAMOND, centre('N3'), AGGREGATES]);
    expect(propose(findings).nextTests).toEqual([]);
    const disputed = propose(findings, { disputed: true });
    expect(disputed.conclusion).toBe('natural');
    expect(disputed.missing[0]).toContain('Two persons disagree');
    expect(disputed.nextTests.length).toBeGreaterThan(3);
    expect(disputed.nextTests[0]!.why).toContain('a further witness');
    expect(disputed.nextTests.map((next) => next.method)).not.toContain('infrared');
  });
});
