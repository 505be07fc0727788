import { describe, expect, test } from 'vitest';
import { COLOUR_CLASSES } from '../../../../app/domain/colour-class.ts';
import { proposal as proposalSchema } from '../../../../app/evidence/proposal.ts';
import { centre, DIAMOND, fact, LOOSE, propose, proposeFor, weigh } from './finding-fixtures.ts';
import { dice } from './seeded.ts';

const AGGREGATES = fact('infrared:type-IaAB', 'natural', 'strong', 'infrared');
const ZONING = fact('pattern:octahedral-zoning', 'natural', 'strong', 'growth-pattern');
const STRIATIONS = fact('pattern:striations', 'grown-cvd', 'strong', 'growth-pattern');
const SECTORS = fact('pattern:cuboctahedral-sectors', 'grown-hpht', 'strong', 'growth-pattern');
const SHORT_OVER_LONG = fact('glow:short-over-long', 'grown', 'supporting', 'fluorescence-short-wave');
const LONG_OVER_SHORT = fact('glow:long-over-short', 'natural', 'supporting', 'fluorescence-long-wave');
const BANDED = fact('strain:banded', 'natural', 'supporting', 'crossed-polarisers');
const COLUMNAR = fact('strain:columnar', 'grown-cvd', 'supporting', 'crossed-polarisers');
const TYPE_IIA = fact('infrared:type-IIa', 'none', 'neutral', 'infrared');
const TRANSPARENT = fact('ultraviolet:transparent', 'none', 'neutral', 'ultraviolet-transmission');

describe('the diamond check comes first', () => {
  test.each([
    ['nothing at all', []],
    ['strong natural findings', [centre('N3'), AGGREGATES, ZONING]],
    ['strong grown findings', [centre('SIV'), STRIATIONS]],
    ['a thermal probe', [fact('thermal:diamond-like', 'diamond', 'supporting', 'thermal-probe'), AGGREGATES, centre('N3')]],
    ['the lattice absorption', [fact('infrared:lattice', 'diamond', 'strong', 'infrared'), AGGREGATES, centre('N3')]],
    ['a person’s own word', [fact('examiner:raman', 'diamond', 'diagnostic', 'raman'), AGGREGATES, centre('N3')]],
    ['a masked line', [fact('diamond-line:masked', 'none', 'neutral', 'photoluminescence'), AGGREGATES, ZONING]],
  ])('%s without the diamond line stays undetermined', (_, facts) => {
    const result = propose(weigh(facts));
    expect(result.conclusion).toBe('undetermined');
    expect(result.reasons[0]).toContain('diamond check has not passed');
    const raman = result.nextTests.find((next) => next.method === 'raman');
    expect(raman?.why).toContain('decides whether it is diamond');
  });

  test('the line absent, or an imitation’s lines, mean not diamond', () => {
    expect(propose(weigh([fact('diamond-line:absent', 'not-diamond', 'diagnostic', 'raman')])).conclusion).toBe('not-diamond');
    expect(propose(weigh([fact('simulant:MOISSANITE', 'not-diamond', 'diagnostic', 'raman')])).conclusion).toBe('not-diamond');
    expect(propose(weigh([fact('diamond-line:absent', 'not-diamond', 'strong', 'photoluminescence')])).conclusion).toBe('not-diamond');
  });

  test('bench tests say not diamond only in pairs', () => {
    const gravity = fact('gravity:not-diamond', 'not-diamond', 'strong', 'specific-gravity');
    expect(propose(weigh([gravity])).conclusion).toBe('undetermined');
    expect(propose(weigh([gravity, fact('seen:facet-doubling', 'not-diamond', 'strong', 'microscopy')])).conclusion).toBe('not-diamond');
  });

  test('line seen and imitation proven contradict each other, both named', () => {
    const result = propose(weigh([DIAMOND, fact('simulant:CORUNDUM', 'not-diamond', 'diagnostic', 'raman')]));
    expect(result.conclusion).toBe('undetermined');
    expect(result.reasons.join(' ')).toMatch(/contradicts itself.*For diamond.*Against diamond/);
  });

  test('no line, but facts that only diamond shows: not decided', () => {
    expect(propose(weigh([fact('diamond-line:absent', 'not-diamond', 'strong', 'photoluminescence'), AGGREGATES])).conclusion).toBe('undetermined');
  });
});

describe('colour', () => {
  test.each(COLOUR_CLASSES.filter((colour) => colour !== 'colourless' && colour !== 'unknown'))('%s leaves the screening', (colourClass) => {
    const stone = { ...LOOSE, colourClass };
    expect(propose(weigh([DIAMOND, centre('N3'), AGGREGATES]), { stone }).conclusion).toBe('out-of-scope');
    expect(propose(weigh([fact('simulant:YAG', 'not-diamond', 'diagnostic', 'raman')]), { stone }).conclusion).toBe('not-diamond');
    expect(propose(weigh([AGGREGATES]), { stone }).conclusion).toBe('undetermined');
  });
  test('not stated: no rule of origin', () => {
    const result = propose(weigh([DIAMOND, centre('N3'), AGGREGATES]), { stone: { ...LOOSE, colourClass: 'unknown' } });
    expect(result.conclusion).toBe('undetermined');
    expect(result.reasons.join(' ')).toContain('colour class is not stated');
    expect(result.nextTests).toEqual([]);
  });
});

describe('what a nature needs', () => {
  test('two strong findings from independent methods', () => {
    expect(proposeFor(centre('N3'), AGGREGATES).conclusion).toBe('natural');
    expect(proposeFor(centre('SIV'), STRIATIONS).conclusion).toBe('grown-cvd');
    expect(proposeFor(centre('NI883'), SECTORS).conclusion).toBe('grown-hpht');
  });
  test('one strong and two supporting ones from two other methods', () => {
    expect(proposeFor(centre('N3'), LONG_OVER_SHORT, BANDED).conclusion).toBe('natural');
    expect(proposeFor(centre('SIV'), SHORT_OVER_LONG, COLUMNAR).conclusion).toBe('grown-undetermined-method');
    expect(proposeFor(STRIATIONS, SHORT_OVER_LONG, COLUMNAR).conclusion).toBe('grown-cvd');
  });
  test('several findings of one method are one witness', () => {
    expect(proposeFor(centre('N3'), fact('family:nickel-nitrogen', 'natural', 'strong', 'photoluminescence')).conclusion).toBe('undetermined');
    expect(proposeFor(AGGREGATES, fact('infrared:platelet', 'natural', 'strong', 'infrared'), fact('infrared:3107', 'natural', 'supporting', 'infrared')).conclusion).toBe('undetermined');
    expect(proposeFor(centre('N3'), LONG_OVER_SHORT, fact('glow:other', 'natural', 'supporting', 'fluorescence-short-wave')).conclusion).toBe('undetermined');
  });
  test('the same line in two spectra is one fact', () => {
    expect(proposeFor(centre('N3'), centre('N3', 'absorption')).conclusion).toBe('undetermined');
  });
  test('supporting findings never make a nature, however many', () => {
    const many = [LONG_OVER_SHORT, BANDED, fact('ultraviolet:opaque', 'natural', 'supporting', 'ultraviolet-transmission'), fact('seen:crystal-inclusion', 'natural', 'supporting', 'microscopy')];
    expect(proposeFor(...many).conclusion).toBe('undetermined');
    for (const one of many) expect(proposeFor(one).conclusion).toBe('undetermined');
  });
  test('a person’s own words do not decide alone', () => {
    expect(proposeFor(fact('examiner:microscopy', 'natural', 'diagnostic', 'microscopy')).conclusion).toBe('undetermined');
  });
});

test.each([
  ['silicon-vacancy', centre('SIV'), 'Silicon-vacancy alone'],
  ['type IIa', TYPE_IIA, 'Type IIa alone'],
  ['ultraviolet transparency', TRANSPARENT, 'ultraviolet alone'],
  ['no fluorescence', fact('glow-both:inert', 'none', 'neutral', 'fluorescence-short-wave'), 'Absence of fluorescence alone'],
  ['no line', fact('centres:none', 'none', 'neutral', 'photoluminescence'), 'absence of a line'],
  ['NV without silicon', centre('NV0'), 'not read as natural'],
])('%s alone never decides, and the proposal says why', (_, one, sentence) => {
  const result = proposeFor(one);
  expect(result.conclusion).toBe('undetermined');
  expect(result.reasons.join(' ')).toContain(sentence);
});

test('facts without weight stay without it, whatever is claimed of them', () => {
  const claimed = [
    { ...TYPE_IIA, supports: 'grown-cvd' as const, strength: 'diagnostic' as const }, { ...TRANSPARENT, supports: 'grown' as const, strength: 'strong' as const },
    fact('centre:NV-', 'natural', 'diagnostic', 'photoluminescence'), fact('glow-long:inert', 'grown', 'strong', 'fluorescence-long-wave'),
  ];
  expect(proposeFor(...claimed).conclusion).toBe('undetermined');
  expect(proposeFor({ ...centre('SIV'), strength: 'diagnostic' }).conclusion).toBe('undetermined');
});

test('silicon-vacancy does not name CVD', () => {
  expect(proposeFor({ ...centre('SIV'), supports: 'grown-cvd' }, SECTORS).conclusion).toBe('grown-hpht');
});

describe('contradictions', () => {
  test('strong on both sides: both are named, nothing is chosen', () => {
    const result = proposeFor(centre('N3'), AGGREGATES, centre('SIV'), STRIATIONS);
    expect(result.conclusion).toBe('undetermined');
    expect(result.reasons.join(' ')).toMatch(/contradict.*For natural growth: .*N3.*For growth in a laboratory: .*SiV/);
    expect(result.against.length).toBe(4);
  });
  test('two supporting findings from two methods weigh against a nature', () => {
    expect(proposeFor(centre('N3'), AGGREGATES, SHORT_OVER_LONG).conclusion).toBe('natural');
    expect(proposeFor(centre('N3'), AGGREGATES, SHORT_OVER_LONG, COLUMNAR).conclusion).toBe('undetermined');
  });
  test('one supporting finding against is said', () => {
    expect(proposeFor(centre('N3'), AGGREGATES, SHORT_OVER_LONG).against).toEqual(['Supports growth in a laboratory: glow:short-over-long seen (short-wave fluorescence, R4).']);
  });
  test('CVD and HPHT both claimed: grown, method open', () => {
    const result = proposeFor(STRIATIONS, centre('NI883'), SHORT_OVER_LONG);
    expect(result.conclusion).toBe('grown-undetermined-method');
    expect(result.reasons.join(' ')).toContain('growth method stays open');
  });
});

test('a natural stone with a finding of treatment leaves the screening', () => {
  const result = proposeFor(centre('N3'), AGGREGATES, fact('seen:green-graining', 'treatment', 'supporting', 'microscopy'));
  expect(result.conclusion).toBe('out-of-scope');
  expect(result.reasons.join(' ')).toContain('finding of treatment');
});

describe('what does not count', () => {
  const sound = weigh([DIAMOND, centre('N3')]);
  test('findings set aside and findings of instruments out of order are named', () => {
    const result = propose([...sound, ...weigh([AGGREGATES], { id: 'x', state: 'set-aside', run: 'R7' }), ...weigh([ZONING], { id: 'y', counts: false, run: 'R8' })]);
    expect(result.conclusion).toBe('undetermined');
    expect(result.missing.filter((sentence) => sentence.startsWith('Does not count'))).toHaveLength(2);
    expect(result.missing.join(' ')).toMatch(/R7\): set aside/);
    expect(result.missing.join(' ')).toMatch(/R8\): the instrument of this run was not in order/);
    expect(result.counted).toEqual(['f0', 'f1']);
  });
  test('a test with an instrument out of order is proposed again', () => {
    const result = propose([...sound, ...weigh([AGGREGATES], { id: 'x', counts: false })]);
    expect(result.nextTests.map((next) => next.method)).toContain('infrared');
    expect(propose([...sound, ...weigh([TYPE_IIA], { id: 'x' })]).nextTests.map((next) => next.method)).not.toContain('infrared');
  });
  test('replaced findings are gone', () => {
    const result = propose([...sound, ...weigh([AGGREGATES], { id: 'x', state: 'replaced' })]);
    expect(result.counted).toEqual(['f0', 'f1']);
    expect(result.missing.join(' ')).not.toContain('Does not count');
  });
});

describe('next tests', () => {
  const findings = weigh([DIAMOND, centre('N3')]);
  test('those that would settle most come first, and say what they would find', () => {
    const { nextTests } = propose(findings);
    expect(nextTests[0]).toMatchObject({ method: 'growth-pattern', why: expect.stringContaining('would settle it: octahedral zoning') });
    expect(nextTests.findIndex((next) => next.method === 'infrared')).toBeLessThan(nextTests.findIndex((next) => next.method === 'crossed-polarisers'));
    expect(nextTests.map((next) => next.method)).not.toContain('raman');
  });
  test('only what the stone allows', () => {
    const closed = propose(findings, { stone: { mounted: true, setting: 'closed-back', colourClass: 'colourless' } });
    for (const method of ['infrared', 'absorption', 'magnet', 'crossed-polarisers', 'specific-gravity']) expect(closed.nextTests.map((next) => next.method)).not.toContain(method);
    expect(closed.missing.join(' ')).toContain('Not possible on this mounted stone (closed back)');
    const open = propose(findings, { stone: { mounted: true, setting: 'open-back', colourClass: 'colourless' } });
    expect(open.nextTests.map((next) => next.method)).toContain('infrared');
    expect(open.nextTests.map((next) => next.method)).not.toContain('magnet');
  });
  test('only what the laboratory has; the rest is named', () => {
    const result = propose(findings, { methodsAvailable: ['raman', 'infrared'] });
    expect(result.nextTests.map((next) => next.method)).toEqual(['infrared']);
    expect(result.missing.join(' ')).toMatch(/No instrument here for .*growth pattern/);
  });
  test('a settled stone needs none', () => {
    expect(proposeFor(centre('N3'), AGGREGATES).nextTests).toEqual([]);
    expect(proposeFor(centre('SIV'), STRIATIONS).nextTests).toEqual([]);
  });
  test('a grown stone whose method is open is told what would name it', () => {
    const result = proposeFor(centre('SIV'), SHORT_OVER_LONG, fact('examiner:microscopy', 'grown', 'strong', 'microscopy'));
    expect(result.conclusion).toBe('grown-undetermined-method');
    expect(result.nextTests[0]).toMatchObject({ method: 'growth-pattern' });
  });
});

test('the same input in any order gives the same proposal', () => {
  const random = dice(21);
  const pool = [DIAMOND, centre('N3'), centre('SIV'), centre('NV0'), centre('CVD596'), AGGREGATES, ZONING, STRIATIONS, SECTORS, SHORT_OVER_LONG, LONG_OVER_SHORT, BANDED, COLUMNAR, TYPE_IIA, TRANSPARENT];
  for (let round = 0; round < 500; round++) {
    const findings = weigh(random.shuffled(pool).slice(0, 1 + Math.floor(random.next() * 9))).map((finding, i) => ({ ...finding, counts: !random.chance(0.1), state: random.chance(0.1) ? 'set-aside' as const : 'accepted' as const, run: `R${i % 4}` }));
    const methodsDone = findings.map((finding) => finding.method);
    const first = propose(findings, { methodsDone });
    const shuffled = propose(random.shuffled(findings), { methodsDone: random.shuffled(methodsDone) });
    expect(shuffled).toEqual(first);
    expect(proposalSchema.safeParse(first).success).toBe(true);
  }
});

test('words that screening may not use never appear', () => {
  for (const facts of [[centre('N3'), AGGREGATES], [centre('SIV'), STRIATIONS], [], [centre('N3'), centre('SIV')]]) {
    expect(JSON.stringify(proposeFor(...facts))).not.toMatch(/certif|guarante|genuine/i);
  }
});
