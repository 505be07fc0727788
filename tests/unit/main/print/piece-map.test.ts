import { describe, expect, test } from 'vitest';
import { USUAL_GRID } from '../../../../app/piece/mark.ts';
import { AS_TAKEN } from '../../../../app/piece/picture-view.ts';
import { pieceMapPart, type PieceMapPart } from '../../../../app/report/sections/piece-map.ts';
import { writePng } from '../../../../main/demonstration/write-png.ts';
import { renderReport } from '../../../../main/print/render-report.ts';
import { readPdf } from './read-pdf.ts';
import { sampleReport } from './sample-report.ts';

type PaperMap = PieceMapPart['maps'][number];

const PNG = Buffer.from(writePng({ width: 90, height: 60, rgb: new Uint8Array(90 * 60 * 3).fill(120) }, 'invented')).toString('base64');
const marks = (count: number): PaperMap['marks'] => Array.from({ length: count }, (_, i) => ({
  number: i + 1, x: ((i * 37) % 100) / 100, y: ((i * 61) % 100) / 100, radius: 0.02, stone: `B-${i + 1}`, position: `ring ${i + 1}`,
  conclusion: i === 0 ? { id: 'grown-cvd', words: 'laboratory-grown diamond – CVD growth characteristics' } : null,
}));
const mapOf = (changes: Partial<PaperMap>): PaperMap => ({
  heading: 'Item B, front', ground: { kind: 'photograph', photographId: 'p' }, view: AS_TAKEN, picture: { base64: PNG, width: 90, height: 60 },
  caption: 'Brooch from above.', marks: marks(19), open: ['One stone without a mark: B-20.'], ...changes,
});
const pages = async (maps: readonly PaperMap[], pageSize: 'A4' | 'Letter' = 'A4') => {
  const model = sampleReport();
  const part = pieceMapPart.parse({ section: 'piece-map', maps });
  return (await readPdf(await renderReport({ ...model, pageSize, sections: [part, ...model.sections] }))).pages;
};

describe('the map of a piece on paper', () => {
  test.each(['A4', 'Letter'] as const)('stands with its legend: number, stone, place, opinion in words (%s)', async (size) => {
    const text = (await pages([mapOf({})], size)).join(' ');
    for (const part of ['Map of the piece', 'Item B, front', 'Brooch from above.', 'B-19', 'ring 19', 'Laboratory-grown diamond – CVD growth characteristics', 'No conclusion recorded', 'One stone without a mark: B-20.']) expect(text).toContain(part);
  });

  test('200 marks on one map are all printed, on the picture and in the legend', async () => {
    const text = (await pages([mapOf({ marks: marks(200) })])).join(' ');
    for (let number = 1; number <= 200; number += 1) expect(text).toMatch(new RegExp(`\\bB-${number}\\b`));
  });

  test('a grid, a turned and cropped picture, and one that can’t be drawn are printed as well', async () => {
    const turned = { rotation: 30, crop: { x: 0.1, y: 0.1, width: 0.8, height: 0.8 }, scale: { from: { x: 0, y: 0.5 }, to: { x: 1, y: 0.5 }, millimetres: 30 } };
    const text = (await pages([
      mapOf({ heading: 'Item B, grid', ground: USUAL_GRID, picture: null }), mapOf({ heading: 'Item B, turned', view: turned }), mapOf({ heading: 'Item B, lost', picture: null }),
      mapOf({ heading: 'Item B, broken', picture: { base64: 'AAAA', width: 3, height: 2 } }),
    ])).join(' ');
    for (const name of ['Maps of the pieces', 'Item B, grid', 'Item B, turned', 'Item B, lost', 'Item B, broken', '5 mm']) expect(text).toContain(name);
  });
});
