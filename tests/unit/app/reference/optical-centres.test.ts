import { describe, expect, test } from 'vitest';
import { expectedLine } from '../../../../app/reference/optical-centre.ts';
import { OPTICAL_CENTRES, opticalCentre } from '../../../../app/reference/optical-centres.ts';
import { ARTEFACT_LINES } from '../../../../app/reference/reference-lines.ts';

const ids = OPTICAL_CENTRES.map((centre) => centre.id);

test('ids are unique, also against the artefact lines', () => {
  const all = [...ids, ...ARTEFACT_LINES.map((line) => line.id)];
  expect(new Set(all).size).toBe(all.length);
});

test('the centres that every screening needs are there', () => {
  expect(ids).toEqual(expect.arrayContaining(['N3', 'N2', 'CVD468', 'TR12', 'NI484', 'NI494', 'H4', 'S3', 'CVD499', 'H3', '3H', 'CVD533', 'CVD563', 'NV0', 'CO580', '595', 'CVD596', 'CVD597', 'NV-', 'B648', 'SIV', 'GR1', 'NI787', 'NI794', 'NI883', 'SIV0', 'H2']));
});

describe.each(OPTICAL_CENTRES.map((centre) => [centre.id, centre] as const))('%s', (_, centre) => {
  test('has a source, a counter-example and a mode', () => {
    expect(centre.source.length).toBeGreaterThan(8);
    expect(centre.caution.length).toBeGreaterThan(3);
    expect(centre.modes.length).toBeGreaterThan(0);
  });
  test('its position lies in its own windows', () => {
    expect(centre.roomNm).toBeGreaterThanOrEqual(centre.roomWindowNm[0]);
    expect(centre.roomNm).toBeLessThanOrEqual(centre.roomWindowNm[1]);
    const cold = expectedLine(centre, 77);
    expect(cold.nm).toBe(centre.coldNm);
    expect(cold.hi - cold.lo).toBeGreaterThan(0);
  });
  test('whatever occurs with every origin carries no weight', () => {
    if (centre.supports === 'none') expect(centre.strength).toBe('neutral');
    else expect(centre.strength).not.toBe('neutral');
    expect(centre.strength).not.toBe('diagnostic');
  });
  test('what it refers to exists', () => {
    for (const id of [centre.yieldsTo, centre.companionOf]) if (id !== undefined) expect(opticalCentre(id)).toBeDefined();
  });
});

test('silicon moves by about a nanometre between 77 K and room temperature (Neu et al. 2013: 20 cm-1)', () => {
  const siv = opticalCentre('SIV')!;
  expect(expectedLine(siv, 295).nm - expectedLine(siv, 77).nm).toBeCloseTo(1.09, 0);
});
