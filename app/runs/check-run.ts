import { METHODS, type Hazard, type MethodId } from '../domain/method.ts';
import type { Observation } from '../domain/observation.ts';
import { err, ok, type Result } from '../result.ts';
import { hazardsOf } from './hazards-of.ts';

export type RunPlan = {
  readonly method: MethodId;
  readonly temperatureK: number | null;
  readonly cautions: readonly Hazard[];
  readonly observation: Observation | null;
  /** True where the method's fact was measured on photographs instead of seen. */
  readonly measured?: boolean;
  readonly fileCount: number;
};

export type RunPlace = {
  readonly stoneLabel: string;
  readonly mounted: boolean;
  readonly setting: 'open-back' | 'closed-back' | null;
  /** True once the item went back to the client. */
  readonly returned: boolean;
};

export type RunInstrument = { readonly name: string; readonly methods: readonly MethodId[]; readonly active: boolean };

/** Why a run can't be recorded. `field` names the input that is wrong, where one is. */
export type RunRefusal = { readonly code: 'refused' | 'invalid-input'; readonly message: string; readonly next: string; readonly field?: string };

const HAZARD_WORDS: Readonly<Record<Hazard, string>> = {
  laser: 'laser light', ultraviolet: 'ultraviolet light', cryogen: 'cold of the cryogen',
};

function checkPlace(plan: RunPlan, place: RunPlace): RunRefusal | null {
  const { name, possibleMounted } = METHODS[plan.method];
  if (place.returned) {
    return { code: 'refused', message: `${place.stoneLabel} was returned to the client; a run can't be recorded for a stone that is not here.`, next: 'Take the item in again if it came back.' };
  }
  if (!place.mounted || possibleMounted === 'yes') return null;
  if (possibleMounted === 'no') {
    return { code: 'refused', message: `${name} is not possible on a mounted stone: the metal of the setting would decide the reading.`, next: 'Choose a test that works on mounted stones, or ask the client for leave to unmount it.' };
  }
  if (place.setting === 'open-back') return null;
  return { code: 'refused', message: `${name} needs light to pass through the stone; the setting of ${place.stoneLabel} is closed at the back.`, next: 'Choose a test that works from the front, or ask the client for leave to unmount it.' };
}

function checkCautions(plan: RunPlan): RunRefusal | null {
  const open = hazardsOf(plan.method, plan.temperatureK).filter((hazard) => !plan.cautions.includes(hazard));
  if (open.length === 0) return null;
  return { code: 'refused', message: `The caution for ${open.map((hazard) => HAZARD_WORDS[hazard]).join(' and ')} was not acknowledged.`, next: 'Read the caution of this method and confirm it, then record the run.' };
}

function checkContent(plan: RunPlan): RunRefusal | null {
  const { name, yields } = METHODS[plan.method];
  if (plan.observation !== null && plan.observation.method !== plan.method) {
    return { code: 'invalid-input', field: 'observation', message: `The observation is of ${METHODS[plan.observation.method].name.toLowerCase()}, the run is ${name.toLowerCase()}.`, next: 'Choose the method again and enter what was seen with it.' };
  }
  if (yields === 'observation' && plan.observation === null && plan.measured !== true) {
    return { code: 'invalid-input', field: 'observation', message: `${name} is an observation: write down what was seen.`, next: 'Fill in the observation.' };
  }
  if (yields === 'spectrum' && plan.fileCount === 0 && plan.observation === null) {
    return { code: 'invalid-input', field: 'files', message: `${name} brings home a file: add at least one.`, next: 'Drop the instrument’s files or pick them.' };
  }
  return null;
}

function checkInstrument(plan: RunPlan, instrument: RunInstrument | null): RunRefusal | null {
  if (instrument === null) return null;
  if (!instrument.active) {
    return { code: 'refused', message: `${instrument.name} is out of use.`, next: 'Choose another instrument, or put it back into use in the list of instruments.' };
  }
  if (instrument.methods.includes(plan.method)) return null;
  return { code: 'invalid-input', field: 'instrumentId', message: `${instrument.name} is not entered for ${METHODS[plan.method].name.toLowerCase()}.`, next: 'Choose an instrument for this method, or add the method to it in the list of instruments.' };
}

/** Whether a run may be recorded at all, before anything is read. */
export function checkRun(plan: RunPlan, place: RunPlace, instrument: RunInstrument | null): Result<null, RunRefusal> {
  const refusal = checkPlace(plan, place) ?? checkContent(plan) ?? checkInstrument(plan, instrument) ?? checkCautions(plan);
  return refusal === null ? ok(null) : err(refusal);
}
