import { describe, expect, test } from 'vitest';
import { contrast } from '../../../../app/figure/contrast.ts';
import { INKS } from '../../../../app/figure/figure-model.ts';
import { TEXT_INKS, THEMES } from '../../../../app/figure/inks.ts';

// WCAG 2.2, success criterion 1.4.3 (level AA): 4.5:1 for text of normal size.
const AA = 4.5;

describe.each(Object.entries(THEMES))('%s', (_, theme) => {
  test.each(TEXT_INKS)('%s reads on every ground', (ink) => {
    for (const ground of Object.values(theme.grounds)) expect(contrast(theme.inks[ink], ground)).toBeGreaterThanOrEqual(AA);
  });
  test('has every role as a six-digit colour', () => {
    for (const ink of INKS) expect(theme.inks[ink]).toMatch(/^#[0-9a-f]{6}$/);
  });
});
