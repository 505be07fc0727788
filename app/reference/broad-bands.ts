import type { Strength, Supports } from '../domain/finding.ts';

export type BroadBand = {
  readonly id: string; readonly name: string; readonly nm: number; readonly fwhmNm: number;
  readonly supports: Supports; readonly strength: Strength; readonly caution: string; readonly source: string;
};

/** Broad absorption bands at room temperature; centre and full width at half maximum, nm. Widths from memory. */
export const BROAD_BANDS: readonly BroadBand[] = [
  { id: 'BAND270', name: '270 nm band', nm: 270, fwhmNm: 46, supports: 'none', strength: 'neutral', caution: 'isolated nitrogen, natural or grown', source: 'Luo et al., Appl. Phys. Lett. (2022), arXiv 2207.14278' },
  { id: 'BAND480', name: '480 nm band', nm: 480, fwhmNm: 90, supports: 'natural', strength: 'strong', caution: 'speaks for natural growth, not for an untreated stone', source: 'Lai et al., Diamond Relat. Mater. 142 (2024) 110825' },
  { id: 'BAND520', name: '520 nm band', nm: 520, fwhmNm: 100, supports: 'grown-cvd', strength: 'supporting', caution: 'weighs with the 360 nm band; changes with light and heat; natural pink stones have 550 nm', source: 'Khan et al. 2009, arXiv 0909.1190' },
  { id: 'BAND550', name: '550 nm band', nm: 550, fwhmNm: 95, supports: 'natural', strength: 'supporting', caution: 'plastic deformation; treated stones keep it; CVD stones have 520 nm', source: 'Gems & Gemology Lab Notes, Spring 2013' },
];
