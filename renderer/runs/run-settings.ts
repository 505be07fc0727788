import type { InstrumentMemory, InstrumentView } from '../../app/contract/work.ts';
import type { MethodId } from '../../app/domain/method.ts';
import { METHODS } from '../../app/domain/method.ts';
import { resolutionUnitOf } from '../../app/domain/resolution-unit.ts';
import { readNumber } from '../look/read-number.ts';

/** Settings of a run as typed. */
export type RunSettings = { readonly laserNm: string; readonly temperatureK: string; readonly integrationMs: string; readonly resolution: string };
export type SettingKey = keyof RunSettings;
export type SettingNumbers = { readonly [K in SettingKey]: number | null };

export const NO_SETTINGS: RunSettings = { laserNm: '', temperatureK: '', integrationMs: '', resolution: '' };

/**
 * What an instrument remembers, as it stands in the fields. Where one instrument serves methods with resolutions in nm and in
 * cm-1, the remembered number may be either, so it is asked for.
 */
export function rememberedSettings(instrument: Pick<InstrumentView, 'remembers' | 'methods'> | undefined): RunSettings {
  const memory: InstrumentMemory | undefined = instrument?.remembers;
  const curves = instrument?.methods.filter((method) => METHODS[method].yields === 'spectrum') ?? [];
  const oneUnit = new Set(curves.map(resolutionUnitOf)).size <= 1;
  const text = (value: number | undefined): string => (value === undefined ? '' : String(value));
  return { laserNm: text(memory?.laserNm), temperatureK: text(memory?.temperatureK), integrationMs: text(memory?.integrationMs), resolution: oneUnit ? text(memory?.resolution) : '' };
}

/** The settings that mean something for a method. */
export function settingsOf(method: MethodId): SettingKey[] {
  if (METHODS[method].yields !== 'spectrum') return [];
  const laser = method === 'raman' || method === 'photoluminescence';
  return [...(laser ? ['laserNm' as const] : []), 'temperatureK', 'integrationMs', 'resolution'];
}

const LIMITS: Readonly<Record<SettingKey, readonly [number, number]>> = { laserNm: [200, 1100], temperatureK: [4, 400], integrationMs: [0, 3_600_000], resolution: [0.0001, 100] };

/** Numbers of the settings that the method has; a sentence for each that is none or lies outside what can be. */
export function readSettings(settings: RunSettings, method: MethodId): { readonly numbers: SettingNumbers; readonly faults: Readonly<Record<string, string>> } {
  const used = settingsOf(method);
  const faults: Record<string, string> = {};
  const read = (key: SettingKey): number | null => {
    if (!used.includes(key)) return null;
    const number = readNumber(settings[key]);
    const [least, most] = LIMITS[key];
    if (number === undefined) return null;
    if (number >= least && number <= most) return number;
    faults[key] = Number.isNaN(number) ? 'Write a number, for instance 532.1.' : `From ${least} to ${most.toLocaleString('en')}.`;
    return null;
  };
  return { numbers: { laserNm: read('laserNm'), temperatureK: read('temperatureK'), integrationMs: read('integrationMs'), resolution: read('resolution') }, faults };
}

/** Instruments for a method, those in order first. */
export const instrumentsFor = (method: MethodId, instruments: readonly InstrumentView[]): InstrumentView[] =>
  instruments.filter((i) => i.active && i.methods.includes(method)).sort((a, b) => Number(b.state === 'in-order') - Number(a.state === 'in-order') || a.name.localeCompare(b.name, 'en'));
