/** Value of `--name=VALUE` or `--name VALUE` among the arguments of the program; undefined where it is not there or has no value. */
export function statedValue(args: readonly string[], name: string): string | undefined {
  const joined = args.find((argument) => argument.startsWith(`--${name}=`));
  const at = args.indexOf(`--${name}`);
  const value = joined !== undefined ? joined.slice(name.length + 3) : at < 0 ? undefined : args[at + 1];
  return value === undefined || value === '' || value.startsWith('--') ? undefined : value;
}
