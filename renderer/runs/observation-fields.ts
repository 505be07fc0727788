import { GLOW_COLOURS, GLOW_STRENGTHS, type ObservedMethod } from '../../app/domain/observation.ts';
import { GLOW_WORDS, OBSERVATION_WORDS } from '../../app/runs/observation-words.ts';

type Option = { readonly value: string; readonly label: string };
export type ObservationField =
  | { readonly kind: 'choice'; readonly key: string; readonly label: string; readonly options: readonly Option[]; readonly missing: string }
  | { readonly kind: 'many'; readonly key: string; readonly label: string; readonly options: readonly Option[]; readonly missing: string }
  | { readonly kind: 'number'; readonly key: string; readonly label: string; readonly suffix: string; readonly least: number; readonly most: number; readonly missing: string | null };

const options = (values: readonly string[]): Option[] => values.map((value) => ({ value, label: OBSERVATION_WORDS[value] ?? value.replaceAll('-', ' ') }));

const STRENGTH: ObservationField = { kind: 'choice', key: 'strength', label: 'Strength', options: GLOW_STRENGTHS.map((value) => ({ value, label: GLOW_WORDS[value] })), missing: 'Choose how strong it is.' };
const COLOUR: ObservationField = { kind: 'choice', key: 'colour', label: 'Colour', options: options(GLOW_COLOURS), missing: 'Choose the colour.' };
const EXPOSURE: ObservationField = { kind: 'number', key: 'exposureSeconds', label: 'Lit for', suffix: 's', least: 0, most: 3600, missing: null };
const GLOW = [STRENGTH, COLOUR, EXPOSURE] as const;

const choice = (key: string, label: string, values: readonly string[], missing: string): ObservationField => ({ kind: 'choice', key, label, options: options(values), missing });

/** What is asked for each kind of observation, in the order in which it is seen. */
export const OBSERVATION_FIELDS: Readonly<Record<ObservedMethod, readonly ObservationField[]>> = {
  'fluorescence-long-wave': GLOW,
  'fluorescence-short-wave': GLOW,
  phosphorescence: [STRENGTH, COLOUR, { kind: 'number', key: 'seconds', label: 'Seen for', suffix: 's', least: 0, most: 3600, missing: 'Write for how many seconds it was seen.' }, EXPOSURE],
  'growth-pattern': [choice('pattern', 'Pattern', ['octahedral-zoning', 'dislocation-network', 'striations', 'cuboctahedral-sectors', 'layer-boundary', 'none-seen', 'other'], 'Choose the pattern.')],
  'crossed-polarisers': [choice('pattern', 'Strain pattern', ['banded', 'mottled', 'tatami', 'columnar', 'none-seen', 'other'], 'Choose the pattern.')],
  magnet: [choice('response', 'Response', ['none', 'weak', 'clear'], 'Choose how it responded.')],
  microscopy: [{
    kind: 'many', key: 'features', label: 'Seen (any number)', missing: 'Choose what was seen, or “nothing seen”.',
    options: options(['metallic-flux', 'pinpoints', 'crystal-inclusion', 'mantle-mineral', 'feather', 'graphitised-fracture', 'green-graining', 'graining', 'inscription', 'facet-doubling', 'gas-bubbles', 'nothing-seen']),
  }],
  'thermal-probe': [choice('reading', 'Reading', ['diamond-like', 'not-diamond-like'], 'Choose the reading.')],
  'electrical-conductivity': [choice('reading', 'Reading', ['conducts', 'does-not-conduct'], 'Choose the reading.')],
  'specific-gravity': [
    { kind: 'number', key: 'value', label: 'Specific gravity', suffix: '', least: 1, most: 9, missing: 'Write the value, for instance 3.52.' },
    { kind: 'number', key: 'uncertainty', label: 'Uncertainty, ±', suffix: '', least: 0, most: 1, missing: 'Write how far it may be off, for instance 0.02.' },
  ],
  'refractive-index': [
    choice('by', 'By', ['refractometer', 'reflectivity'], 'Choose how it was read.'),
    choice('reading', 'Reading', ['over-scale', 'value'], 'Choose whether a value was read.'),
    { kind: 'number', key: 'value', label: 'Refractive index', suffix: '', least: 1.3, most: 3.5, missing: null },
    { kind: 'number', key: 'uncertainty', label: 'Uncertainty, ±', suffix: '', least: 0, most: 0.5, missing: null },
  ],
  'ultraviolet-transmission': [choice('reading', 'Short-wave light', ['opaque', 'partly', 'transparent'], 'Choose the reading.')],
};

export const isObserved = (method: string): method is ObservedMethod => method in OBSERVATION_FIELDS;
