import { describe, expect, test } from 'vitest';
import { SECTIONS, reportSection, sectionById, usualSections } from '../../../../../app/report/sections/index.ts';
import { TEMPLATE_KINDS } from '../../../../../app/report/sections/section.ts';
import { sampleOfMany, sampleReport } from '../../../main/print/sample-report.ts';

describe('the registry of sections', () => {
  test('every schema has its definition and every definition its schema', () => {
    const schemas = reportSection.options.map((option) => option.shape.section.value);
    expect(SECTIONS.map((section) => section.id).sort()).toEqual([...schemas].sort());
  });

  test('every kind of report has sections, each once and each made for it', () => {
    for (const kind of TEMPLATE_KINDS) {
      const usual = usualSections(kind);
      expect(new Set(usual).size).toBe(usual.length);
      expect(usual.length).toBeGreaterThan(4);
      for (const id of usual) expect(sectionById(id).templates).toContain(kind);
    }
  });

  test('a report on one stone opens with the opinion, one on several with the overview', () => {
    expect(usualSections('single-stone')[0]).toBe('opinions');
    expect(usualSections('case')[0]).toBe('overview');
  });

  test('the statements of a section have keys of their own', () => {
    for (const model of [sampleReport(), sampleOfMany(3)]) {
      for (const part of model.sections.filter((one) => one.section !== 'overview' && one.section !== 'custody')) {
        const keys = sectionById(part.section).lines(part).map((line) => line.key);
        expect(keys.length, part.section).toBeGreaterThan(0);
        expect(new Set(keys).size, part.section).toBe(keys.length);
      }
    }
  });
});
