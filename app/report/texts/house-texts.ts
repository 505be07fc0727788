import type { HouseSettings } from '../../domain/house-settings.ts';
import { TEXT_KINDS, TEXT_KIND_INFO, type HouseText, type HouseTexts, type TextKind } from './text-kinds.ts';

/** What stands where the laboratory wrote no version of its own. Scope and limits were kept in the settings before they had versions. */
function suppliedText(kind: TextKind, settings: Pick<HouseSettings, 'scopeText' | 'limitsText'>): string {
  if (kind === 'scope') return settings.scopeText;
  return kind === 'limits' ? settings.limitsText : TEXT_KIND_INFO[kind].supplied;
}

/** The text of each kind that new reports print: the newest version, else what the program comes with. */
export function houseTexts(written: readonly HouseText[], settings: Pick<HouseSettings, 'scopeText' | 'limitsText'>): HouseTexts {
  const newest = new Map<TextKind, HouseText>();
  for (const one of written) if ((newest.get(one.kind)?.version ?? -1) < one.version) newest.set(one.kind, one);
  return Object.fromEntries(TEXT_KINDS.map((kind) => [kind, newest.get(kind) ?? { kind, version: 0, text: suppliedText(kind, settings) }])) as Record<TextKind, HouseText>;
}
