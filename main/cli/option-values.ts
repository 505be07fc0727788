import { InvalidArgumentError } from 'commander';

/** A number inside its limits, or the sentence that says which; `what` names the unit. */
export function numberBetween(min: number, max: number, what: string): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (text.trim() === '' || !Number.isFinite(value) || value < min || value > max) throw new InvalidArgumentError(`It must be a number from ${min} to ${max} ${what}.`);
    return value;
  };
}

/** A whole number inside its limits. */
export function wholeBetween(min: number, max: number, what: string): (text: string) => number {
  return (text) => {
    const value = Number(text);
    if (!/^\d+$/.test(text) || value < min || value > max) throw new InvalidArgumentError(`It must be a whole number from ${min} to ${max} ${what}.`);
    return value;
  };
}

/** A TCP port; 0 for any free one. */
export function portNumber(text: string): number {
  const value = Number(text);
  if (!/^\d+$/.test(text) || value > 65_535) throw new InvalidArgumentError('It must be a whole number from 0 to 65535; 0 takes any free port.');
  return value;
}
