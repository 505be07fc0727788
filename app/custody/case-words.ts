/** What a case holds, counted. */
export type CaseHoldings = {
  /** Remark on the first parcel, and what the first item was declared as. */
  readonly parcelRemark: string; readonly declared: string;
  readonly parcels: number; readonly items: number; readonly loose: number; readonly jewellery: number; readonly lots: number;
  /** Stones of all lots together, as counted. */
  readonly lotCount: number;
};

/** How far the stones of a case have come. */
export type CaseProgress = {
  readonly state: 'open' | 'reported' | 'returned';
  readonly stones: number; readonly tested: number; readonly concluded: number; readonly confirmed: number; readonly disagreed: number;
  /** Label of one stone that waits for the second person, and of one that is disputed. */
  readonly unconfirmedLabel: string | null; readonly disputedLabel: string | null;
  /** What the protocol asks for next, in words: "A-1 infrared". */
  readonly nextTest?: string | null;
};

const SHORT = 60;

function shortened(text: string): string {
  const line = text.trim().replace(/\s+/g, ' ');
  return line.length <= SHORT ? line : `${line.slice(0, SHORT - 1).trimEnd()}…`;
}

const plural = (n: number, one: string, many: string): string => (n === 1 ? `${n} ${one}` : `${n} ${many}`);

function joined(parts: readonly string[]): string {
  return parts.length < 2 ? parts[0] ?? '' : `${parts.slice(0, -1).join(', ')} and ${parts[parts.length - 1]!}`;
}

function lots(h: CaseHoldings): string[] {
  if (h.lots === 0) return [];
  return [h.lots === 1 ? `a lot of ${h.lotCount}` : `${h.lots} lots of ${h.lotCount} together`];
}

/** One line for a list: "estate parcel, 17 stones and a lot of 340". */
export function caseSummary(h: CaseHoldings): string {
  if (h.items === 1) return h.lots === 1 ? `${shortened(h.declared)}, a lot of ${h.lotCount}` : shortened(h.declared);
  const parts = [
    ...(h.loose > 0 ? [plural(h.loose, 'stone', 'stones')] : []),
    ...(h.jewellery > 0 ? [plural(h.jewellery, 'piece of jewellery', 'pieces of jewellery')] : []),
    ...lots(h),
  ];
  const remark = h.parcels === 1 ? shortened(h.parcelRemark) : '';
  return remark === '' ? joined(parts) : `${remark}, ${joined(parts)}`;
}

function openWords(p: CaseProgress): string {
  if (p.stones === 0) return 'stones to list';
  if (p.disagreed > 0) return p.disagreed === 1 ? `examiners disagree on ${p.disputedLabel ?? 'a stone'}` : `examiners disagree on ${p.disagreed} stones`;
  const untested = Math.max(0, p.stones - p.tested);
  const toConclude = p.stones - p.concluded;
  const toConfirm = p.concluded - p.confirmed;
  if (toConclude > 0 && p.tested === 0) return plural(toConclude, 'stone to test', 'stones to test');
  if (toConclude > 0) {
    const words = plural(toConclude, 'stone to conclude', 'stones to conclude');
    const test = p.nextTest === undefined || p.nextTest === null ? '' : `, next ${p.nextTest}`;
    return `${untested > 0 ? `${words}, ${untested} not yet tested` : words}${test}`;
  }
  if (toConfirm === 1) return `second person to confirm ${p.unconfirmedLabel ?? 'a stone'}`;
  if (toConfirm > 1) return `second person to confirm ${toConfirm} stones`;
  return 'report to issue';
}

/** What comes next, in a short clause. */
export function caseNext(p: CaseProgress): string {
  if (p.state === 'returned') return 'returned';
  return p.state === 'reported' ? 'reported, to be collected' : openWords(p);
}
