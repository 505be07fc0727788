import type { FigureModel } from '../../../../app/figure/figure-model.ts';
import { CONCLUSION_WORDS, type ConclusionId } from '../../../../app/domain/conclusion.ts';
import type { ReportModel } from '../../../../app/report/report-model.ts';
import { reportModel1, type ReportModel1 } from '../../../../app/report/stored/report-model-1.ts';
import { upgradeReport1 } from '../../../../app/report/stored/upgrade-report-1.ts';

/** Everything here is invented: laboratory, people, clients, stones and readings. */

function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
}

/** A luminescence spectrum of Lorentzian lines on a slope, with seeded noise. */
export function sampleFigure(seed = 1, points = 1800): FigureModel {
  const random = seeded(seed);
  const lines: [number, number, number][] = [[428.01, 9000, 0.8], [575.1, 16000, 2], [596.9, 9000, 1.4], [637.3, 14000, 1.8], [737.9, 26000, 3.2], [766, 1600, 8], [685, 5200, 60]];
  const x = Array.from({ length: points }, (_, i) => 410 + (i * 440) / (points - 1));
  const y = x.map((at) => 900 + 1300 * Math.exp(-(at - 410) / 25) + (random() - 0.5) * 260
    + lines.reduce((sum, [centre, height, width]) => sum + height / (1 + ((at - centre) / (width / 2)) ** 2), 0));
  return {
    xUnit: 'nm', xLabel: 'wavelength in air, nm', yLabel: 'counts', xRange: [410, 850], yRange: [0, 30000], visibleStrip: true,
    curves: [{ label: 'R5', ink: 'ink', dash: false, x, y }],
    lines: [
      { at: 428.01, name: 'diamond Raman', position: '428.01', ink: 'accent' }, { at: 575.1, name: 'NV⁰', position: '575.1', ink: 'ink' },
      { at: 596.9, name: 'CVD pair', position: '596.5/597.2', ink: 'cvd' }, { at: 637.3, name: 'NV⁻', position: '637.3', ink: 'ink' },
      { at: 737.9, name: 'SiV⁻', position: '737.9', ink: 'cvd' },
    ],
  };
}

const fact = (label: string, value: string, mono = false) => ({ label, value, mono });
const hex = (seed: number): string => {
  const random = seeded(seed);
  return Array.from({ length: 64 }, () => Math.floor(random() * 16).toString(16)).join('');
};

const FINDINGS: ReportModel1['stones'][number]['findings'] = [
  { run: 'R5', method: 'Photoluminescence', statement: 'Diamond line at 428.01 ± 0.04 nm, shift 1332.2 cm⁻¹', says: 'diamond', strength: 'diagnostic', supports: 'diamond', caution: 'it is diamond; says nothing of its growth', counts: true },
  { run: 'R5', method: 'Photoluminescence', statement: 'Pair at 596.5 and 597.2 nm; silicon vacancy at 737.9 ± 0.3 nm', says: '', strength: 'strong', supports: 'grown-cvd', caution: 'silicon vacancies are known in rare natural stones', counts: true },
  { run: 'R6', method: 'Infrared', statement: 'Line at 3123 cm⁻¹; no nitrogen above 4 ppm: type IIa', says: 'strong for CVD growth', strength: 'strong', supports: 'grown-cvd', caution: '', counts: true },
  { run: 'R3', method: 'Fluorescence, short-wave ultraviolet', statement: 'Short-wave glow stronger than long-wave, orange', says: '', strength: 'supporting', supports: 'grown', caution: '', counts: true },
  { run: 'R2', method: 'Magnet', statement: 'No response', says: '', strength: 'neutral', supports: 'none', caution: 'many grown stones hold no metal', counts: true },
  { run: 'R7', method: 'Thermal probe', statement: 'Reads as diamond', says: '', strength: 'supporting', supports: 'diamond', caution: '', counts: false },
];

function stone(label: string, heading: string, id: ConclusionId | null, figures: number, seed = 1): ReportModel1['stones'][number] {
  return {
    label, heading,
    facts: [fact('Item', `C-2026-0117 / ${label}`, true), fact('Described as', heading), fact('Weight', '0.412 ct ± 0.002', true), fact('Measured', '4.79 – 4.81 × 2.94 mm', true), fact('Colour class', 'colourless to near colourless')],
    conclusion: id === null ? null : {
      id, words: CONCLUSION_WORDS[id],
      reasons: 'Rests on two strong findings from independent methods (photoluminescence, infrared) and one supporting (ultraviolet). Nothing recorded speaks against it.',
      departure: '', rules: '2026.1', examiner: 'M. Okafor-Lindqvist', concludedOn: '25 Nov 2026', secondPerson: 'T. Brambilla', confirmedOn: '25 Nov 2026',
    },
    findings: FINDINGS, setAside: label.endsWith('3') ? [{ statement: 'Line at 503.2 nm', reason: 'Stray light of the room lamp; gone in the repeat with the cover closed.' }] : [],
    figures: Array.from({ length: figures }, (_, n) => ({
      heading: n === 0 ? 'Photoluminescence, laser 404.93 nm, 295 K' : 'Photoluminescence, laser 404.93 nm, 77 K',
      caption: `Raw record R5, SHA-256 ${hex(seed).slice(0, 8)}…, attached to the casebook. Positions in air, uncertainty 0.1 nm unless stated.`,
      alt: 'Emission against wavelength with named lines at 428.01, 575.1, 596.9, 637.3 and 737.9 nm', figure: sampleFigure(seed + n, 900),
    })),
    notDone: ['crossed polarisers: no time before the due date', 'ultraviolet transmission: the lamp was being repaired'],
  };
}

/** One pixel of PNG, 1 × 1. */
const PIXEL = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

/** The sample in the first form of a report's content, whose parts are easy to change one by one. */
export function sampleReport1(changes: Partial<ReportModel1> = {}): ReportModel1 {
  return reportModel1.parse({
    schema: 'culet-report-1', language: 'en', demonstration: true, draft: false, number: 'S-2026-0088', revision: 1, title: 'Diamond screening report', pageSize: 'A4',
    laboratory: { name: 'Saltmarsh Gem Laboratory', address: '4 Tidewater Row, Port Ansel\nan invented laboratory', zone: 'Europe/Dublin', logo: null },
    client: { name: 'Harrow & Pell', address: '11 Chandler’s Court, Port Ansel' }, caseNumber: 'C-2026-0117',
    received: '20 Nov 2026', tested: '24 – 25 Nov 2026', issued: '25 November 2026', issuedAt: '2026-11-25T10:15:00.000Z', asks: 'Natural or laboratory-grown?',
    items: [{ label: 'A', kind: 'loose stone', facts: [fact('Declared', 'round brilliant, “natural”'), fact('Declared value', '1 200 EUR'), fact('Weight', '0.412 ct', true), fact('Seal', '20931', true), fact('Condition', 'clean, no chips')], photographs: [{ caption: 'Table up, white light', mediaType: 'image/png', base64: PIXEL, sha256: hex(7) }, { caption: 'Broken file', mediaType: 'image/png', base64: 'AAAA', sha256: hex(8) }] }],
    stones: [stone('A-3', 'loose, round brilliant', 'grown-cvd', 1)],
    instruments: [
      { name: 'Spectrometer 2', methods: 'Raman, Photoluminescence', settings: 'laser 404.93 nm, 295 K, 500 ms', state: 'in order, checked 24 Nov 2026' },
      { name: 'Infrared bench', methods: 'Infrared', settings: 'resolution 4 cm⁻¹', state: 'in order, checked 3 Nov 2026' },
    ],
    scope: 'Screening of colourless to near colourless diamonds for natural or laboratory-grown origin by the methods named in this report. It is an opinion of the undersigned based on the findings listed, and relates only to the items described, as received.',
    limits: ['Screening does not grade quality and does not value.', 'Origin is not stated where the findings do not suffice. No single finding decides: lines of silicon, nickel and nitrogen occur in natural and in laboratory-grown diamond.'],
    signatures: [{ role: 'examiner', name: 'M. Okafor-Lindqvist', on: '25 Nov 2026' }, { role: 'second person', name: 'T. Brambilla', on: '25 Nov 2026' }],
    custody: ['received', 'weighed', 'sealed', 'opened', 'tested', 'sealed'].map((what, i) => ({ at: `2${Math.min(i, 5)} Nov 2026 09:1${i}`, item: 'A', what: `${what}, seal 20931`, who: 'M. Okafor-Lindqvist', weight: i === 1 ? '0.412 ct' : '', hash: hex(20 + i) })),
    rawRecords: ['R2 note.txt', 'R5 emission-404.txt', 'R6 absorbance.jdx'].map((name, i) => ({ run: name.slice(0, 2), name: name.slice(3), size: `${18 + i * 7} kB`, sha256: hex(40 + i) })),
    ...changes,
  });
}

export const sampleReport = (changes: Partial<ReportModel1> = {}): ReportModel => upgradeReport1(sampleReport1(changes));

const NAMES: ConclusionId[] = ['natural', 'grown-cvd', 'grown-hpht', 'grown-undetermined-method', 'not-diamond', 'undetermined', 'out-of-scope'];

/** A report on many stones: no figure for most of them, every conclusion in turn. */
function sampleOfMany1(count: number, changes: Partial<ReportModel1> = {}): ReportModel1 {
  return sampleReport1({
    stones: Array.from({ length: count }, (_, i) => stone(`B-${i + 1}`, `mounted, ${i % 2 === 0 ? 'round brilliant, centre of the third link of the bracelet' : 'oval'}`, NAMES[i % NAMES.length]!, i % 4 === 0 ? 1 : 0, i + 1)),
    custody: Array.from({ length: count * 3 }, (_, i) => ({ at: `21 Nov 2026 ${String(9 + Math.floor(i / 60)).padStart(2, '0')}:${String(i % 60).padStart(2, '0')}`, item: 'B', what: 'tested, run R5', who: 'M. Okafor-Lindqvist', weight: '', hash: hex(100 + i) })),
    rawRecords: Array.from({ length: count * 2 }, (_, i) => ({ run: `R${i + 1}`, name: `bracelet-emission-404-stone-${i + 1}.txt`, size: '21 kB', sha256: hex(400 + i) })),
    ...changes,
  });
}

export const sampleOfMany = (count: number, changes: Partial<ReportModel1> = {}): ReportModel => upgradeReport1(sampleOfMany1(count, changes));

/** Names that are longer than any line, from many scripts, and a stone nobody has concluded. */
export function sampleOfLongNames(): ReportModel {
  const laboratory = 'Łódź–Đakovo Ľudovít Štúr Gemmological Examination Laboratory and Teaching Collection of the Invented Harbour Province of Saltmarsh, Department of Screening';
  const model = sampleOfMany1(3, {
    laboratory: { name: laboratory, address: '4 Tidewater Row, Upper Warehouse, Third Floor, Port Ansel, Invented Harbour Province of Saltmarsh', zone: 'Europe/Warsaw', logo: null },
    client: { name: 'Σοφία Παπαδοπούλου & Александра Щербакова-Ковальчук, 宝石 Jewellers of the Very Long Arcade by the Old Harbour', address: 'Ñuñoa 7, Œuvre Straße' },
    draft: true, demonstration: false, number: '', revision: 0, signatures: [], custody: [], rawRecords: [], instruments: [],
  });
  const first = model.stones[0]!;
  const long = 'An exceptionally wordy description of a bracelet with thirty-one stones in closed settings, one of which had been replaced '.repeat(4).trim();
  return upgradeReport1({
    ...model,
    stones: [
      { ...first, label: 'B-1-centre-of-the-third-link', heading: long, facts: [fact('Described as', long), fact('Digest', hex(3), true), fact('Empty', '')], findings: [], figures: [] },
      { ...model.stones[1]!, conclusion: null, notDone: [] },
      { ...model.stones[2]!, conclusion: { ...model.stones[2]!.conclusion!, secondPerson: '', confirmedOn: '', departure: 'The rules propose undetermined; the growth sectors seen at deep ultraviolet were given more weight.' } },
    ],
  });
}

