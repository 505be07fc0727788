import { z } from 'zod';

export const TEXT_KINDS = ['scope', 'limits', 'disclaimer', 'methods', 'uncertainty', 'decision-rule', 'place', 'conditions', 'sampling', 'external', 'client-information'] as const;
/** The texts that a laboratory words for itself. */
export const textKind = z.enum(TEXT_KINDS);
export type TextKind = z.infer<typeof textKind>;

export type TextKindInfo = {
  readonly title: string;
  /** Where it stands and what for, for who writes it. */
  readonly tells: string;
  /** The text the program comes with: version 0. */
  readonly supplied: string;
};

/** The supplied texts state only what is so in every report that the program makes; a laboratory words its own. */
export const TEXT_KIND_INFO: Readonly<Record<TextKind, TextKindInfo>> = {
  scope: { title: 'Scope', tells: 'What the screening covers. Printed under Scope and limits.', supplied: '' },
  limits: { title: 'Limits', tells: 'What the screening can’t say. Printed under Scope and limits, one paragraph a line.', supplied: '' },
  disclaimer: { title: 'Disclaimer', tells: 'Conditions under which the report may be used. Printed after the limits.', supplied: '' },
  methods: { title: 'Description of methods', tells: 'How the laboratory works, beyond the table of instruments. Printed under Methods and instruments.', supplied: '' },
  uncertainty: {
    title: 'Uncertainty', tells: 'How the uncertainties beside the numbers are to be read. Printed under Methods and instruments.',
    supplied: 'Where a number carries an uncertainty it stands beside it after ±, as one standard deviation unless said otherwise. A number without one is given as it was read, to the last figure shown.',
  },
  'decision-rule': {
    title: 'Decision rule', tells: 'How a statement of conformity is decided, or that none is made. Printed under Methods and instruments.',
    supplied: 'No statement of conformity with a specification is made. Opinions follow the laboratory’s written rules, whose version stands with each opinion.',
  },
  place: { title: 'Place of the work', tells: 'Where tests are made, where it is not elsewhere. Printed under Conduct of the work.', supplied: 'at the laboratory’s address' },
  conditions: {
    title: 'Conditions', tells: 'Temperature and whatever else bears on the results. Printed under Conduct of the work.',
    supplied: 'indoors at room temperature, unless the settings of a test name another temperature of the stone',
  },
  sampling: { title: 'Sampling', tells: 'How stones are drawn where not every one is tested. Printed under Conduct of the work; empty: said in each report.', supplied: '' },
  external: { title: 'From others', tells: 'Which results come from outside the laboratory. Printed under Conduct of the work.', supplied: 'no result comes from outside the laboratory' },
  'client-information': {
    title: 'Client’s statements', tells: 'That what the client states is not the laboratory’s finding. Printed above the items received.',
    supplied: 'What is called declared was stated by the client and was not verified, unless a finding says so.',
  },
};

/** A text as it stands, with the version that a report names. */
export type HouseText = { readonly kind: TextKind; readonly version: number; readonly text: string };
export type HouseTexts = Readonly<Record<TextKind, HouseText>>;
