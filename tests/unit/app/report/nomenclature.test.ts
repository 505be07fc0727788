import { describe, expect, test } from 'vitest';
import { CONCLUSION_WORDS } from '../../../../app/domain/conclusion.ts';
import { houseSettings } from '../../../../app/domain/house-settings.ts';
import { checkNomenclature } from '../../../../app/report/nomenclature.ts';
import { TEXT_KIND_INFO, TEXT_KINDS } from '../../../../app/report/texts/text-kinds.ts';

const words = (text: string, jurisdiction?: 'international' | 'united-states') => checkNomenclature(text, jurisdiction).map((remark) => remark.word);

describe('words that must not stand in a report', () => {
  test.each([
    // ISO 18323:2015: abbreviations of the permitted names.
    ['a lab diamond', 'lab diamond', 'ISO 18323:2015'], ['lab-grown stone', 'lab-grown', 'ISO 18323:2015'], ['a syn. diamond', 'syn. diamond', 'ISO 18323:2015'],
    // ISO 18323:2015, Diamond Terminology Guideline 2018, 16 CFR 23.12.
    ['a cultured diamond', 'cultured', '16 CFR Part 23, § 23.12'],
    // 16 CFR 23.27: real, genuine, precious for anything made.
    ['a Real diamond', 'Real', '23.27'], ['genuine stone', 'genuine', '23.27'], ['a precious stone', 'precious', '23.27'],
    // Diamond Terminology Guideline 2018.
    ['natural treated diamond', 'natural treated', 'Diamond Terminology Guideline'], ['an authentic stone', 'authentic', 'Diamond Terminology Guideline'],
    // 16 CFR 23.13 and 23.28.
    ['it is flawless', 'flawless', '23.13'],
    ['we certify that', 'certify', 'never certainty'], ['Guaranteed natural', 'Guaranteed', 'never certainty'],
    ['certainly natural', 'certainly', 'never certainty'], ['beyond doubt natural', 'beyond doubt', 'never certainty'],
  ])('“%s”', (text, word, source) => {
    const remarks = checkNomenclature(text);
    expect(remarks.map((remark) => remark.word)).toEqual([word]);
    expect(remarks[0]!.source).toContain(source);
    expect(remarks[0]!.why.length).toBeGreaterThan(20);
    expect(text.slice(remarks[0]!.index)).toMatch(new RegExp(`^${word}`));
  });

  test('“synthetic” is permitted by ISO 18323:2015 and remarked upon for readers in the United States', () => {
    expect(words('a synthetic diamond')).toEqual([]);
    expect(words('a synthetic diamond', 'united-states')).toEqual(['synthetic']);
  });

  test('the permitted names and the words of the house pass', () => {
    for (const text of [...Object.values(CONCLUSION_WORDS), 'laboratory-grown diamond', 'laboratory-created diamond', 'treated diamond, irradiated']) expect(words(text, 'united-states')).toEqual([]);
    const { scopeText, limitsText } = houseSettings.parse({});
    for (const text of [scopeText, limitsText, ...TEXT_KINDS.map((kind) => TEXT_KIND_INFO[kind].supplied)]) expect(words(text, 'united-states')).toEqual([]);
  });

  test('what is denied is not promised', () => {
    expect(words('This screening does not certify and cannot guarantee anything.')).toEqual([]);
    expect(words('This report is not a certificate or a guarantee, and never a valuation or warranty.')).toEqual([]);
    // Only “or” and “nor” carry a denial further than one word.
    expect(words('The stone is not mounted and is certified. It is no imitation and therefore guaranteed.')).toEqual(['certified', 'guaranteed']);
    expect(words('Not only certified: we do not sell stones. It is guaranteed.')).toEqual(['certified', 'guaranteed']);
  });

  test('only whole words count', () => {
    expect(words('In reality the results were perfectly repeatable; a ring of precious metal; further testing is warranted.')).toEqual([]);
  });

  test('several remarks come in the order of the text, and none twice for one place', () => {
    expect(words('A genuine lab-grown diamond, certified and guaranteed.')).toEqual(['genuine', 'lab-grown', 'certified', 'guaranteed']);
  });

  test('an empty text has nothing to remark', () => {
    expect(checkNomenclature('')).toEqual([]);
  });
});
