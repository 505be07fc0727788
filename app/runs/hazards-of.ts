import { METHODS, type Hazard, type MethodId } from '../domain/method.ts';

/** Below this the stone was cooled, and the cold can hurt: freezing point of water, kelvin. */
const COOLED_BELOW_K = 273.15;

/** The hazards of a run that a person must acknowledge: those of its method, the cold only where the stone is cooled. */
export function hazardsOf(method: MethodId, temperatureK: number | null): Hazard[] {
  return METHODS[method].hazards.filter((hazard) => hazard !== 'cryogen' || (temperatureK !== null && temperatureK < COOLED_BELOW_K));
}
