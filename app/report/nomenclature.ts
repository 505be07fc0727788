/** Where the reader of a report lives; decides one word on which the rules differ. */
export type Jurisdiction = 'international' | 'united-states';

export type NomenclatureRemark = {
  /** The word as it stands in the text. */
  readonly word: string;
  /** Why it should not stand there, and what to write instead. */
  readonly why: string;
  readonly source: string;
  /** Place of the word in the text, in UTF-16 units from 0. */
  readonly index: number;
};

type Rule = { readonly pattern: RegExp; readonly why: string; readonly source: string; readonly only?: Jurisdiction };

const ISO = 'ISO 18323:2015';
const GUIDELINE = 'Diamond Terminology Guideline, 2018';
const FTC_DIAMOND = '16 CFR Part 23, § 23.12 (2018)';
const FTC_MADE = '16 CFR Part 23, § 23.27 (2018)';
const HOUSE = 'wording of the house: a screening states characteristics, never certainty';

const IN_FULL = 'write “laboratory-grown diamond” in full';

/** Longer wordings first: where two rules meet in one place, the first stands. */
const RULES: readonly Rule[] = [
  { pattern: /\blab(?:oratory)?[ -]?diamonds?\b/giu, why: `“lab diamond” is not a permitted name; ${IN_FULL}.`, source: ISO },
  { pattern: /\blab[ -](?:grown|created)\b/giu, why: `the short form is not permitted; ${IN_FULL}.`, source: `${ISO}; ${GUIDELINE}` },
  { pattern: /\bsyn(?:th)?\.? diamonds?\b/giu, why: `the abbreviation is not permitted; ${IN_FULL}.`, source: ISO },
  { pattern: /\b(?:cultured|cultivated)\b/giu, why: `the word belongs to pearls; ${IN_FULL}.`, source: `${ISO}; ${GUIDELINE}; ${FTC_DIAMOND}` },
  { pattern: /\b(?:natural treated|treated natural)\b/giu, why: 'write “treated diamond” and name the treatment.', source: GUIDELINE },
  { pattern: /\bcertif(?:y|ies|ied|icate|icates|ication)\b/giu, why: 'a screening is an opinion on findings and certifies nothing; write “report” or “consistent with”.', source: HOUSE },
  { pattern: /\bguarant(?:ee|ees|eed|eeing)\b|\bwarrant(?:y|ies)\b/giu, why: 'a screening guarantees nothing; state what was found and what it is consistent with.', source: HOUSE },
  { pattern: /\bgenuine\b/giu, why: 'the word promises certainty and must not be used for anything made; write “natural diamond – characteristics consistent”.', source: `${ISO}; ${FTC_MADE}` },
  { pattern: /\breal\b/giu, why: 'the word must not be used for anything made and says nothing about a stone; name the material.', source: `${ISO}; ${GUIDELINE}; ${FTC_MADE}` },
  { pattern: /\bauthentic\b/giu, why: 'the word must not be used for anything made; name the material.', source: GUIDELINE },
  { pattern: /\b(?:semi-)?precious\b(?! metals?\b)/giu, why: 'the word must not be used for anything made and describes no finding.', source: `${ISO}; ${FTC_MADE}` },
  { pattern: /\b(?:flawless|perfect)\b/giu, why: 'a screening does not grade clarity.', source: '16 CFR Part 23, § 23.13 and § 23.28 (2018)' },
  { pattern: /\b(?:certainly|definitely|unquestionably|undoubtedly|beyond (?:any |all )?doubt|without (?:any )?doubt|proven|100 ?%)/giu, why: 'a screening is an opinion; say on which findings it rests.', source: HOUSE },
  {
    pattern: /\bsynthetics?\b/giu, only: 'united-states',
    why: `readers in the United States may take the word to mean an imitation; ${IN_FULL}.`, source: `${FTC_DIAMOND}; recommended terms of 2018, from memory`,
  },
];

/** Verdicts that turn a word into an honest statement: "does not certify" warns nobody, nor does the last word of "is not a certificate or a guarantee". */
const DENIED_BEFORE = /\b(?:not|no|never|nor|neither|cannot|can['’]t)(?!\s+only\b)(?:\s+\w+)?(?:(?:\s+\w+){0,3}?\s+(?:or|nor)(?:\s+an?)?)?\s+$/iu;
const MAY_BE_DENIED = new Set([HOUSE]);

/** Where names stand in a text, whatever their case. */
function placesOf(names: readonly string[], text: string): (readonly [number, number])[] {
  const lower = text.toLocaleLowerCase('en');
  return names.map((name) => name.trim().toLocaleLowerCase('en')).filter((name) => name !== '').flatMap((name) => {
    const places: (readonly [number, number])[] = [];
    for (let at = lower.indexOf(name); at >= 0; at = lower.indexOf(name, at + name.length)) places.push([at, at + name.length]);
    return places;
  });
}

/**
 * Finds words that should not stand in the free text of a report, in order of place. An empty list means that none was found, not that the text is right.
 * Inside `names`, of clients or laboratories, nothing is remarked upon.
 * `jurisdiction` decides whether “synthetic” is remarked upon: ISO 18323:2015 permits it, 16 CFR Part 23 is wary of it.
 */
export function checkNomenclature(text: string, jurisdiction: Jurisdiction = 'international', names: readonly string[] = []): NomenclatureRemark[] {
  const found: NomenclatureRemark[] = [];
  const taken = placesOf(names, text);
  for (const rule of RULES) {
    if (rule.only !== undefined && rule.only !== jurisdiction) continue;
    for (const match of text.matchAll(rule.pattern)) {
      const end = match.index + match[0].length;
      if (taken.some(([from, to]) => match.index < to && end > from)) continue;
      if (MAY_BE_DENIED.has(rule.source) && DENIED_BEFORE.test(text.slice(0, match.index))) continue;
      taken.push([match.index, end]);
      found.push({ word: match[0], why: rule.why, source: rule.source, index: match.index });
    }
  }
  return found.sort((a, b) => a.index - b.index);
}
