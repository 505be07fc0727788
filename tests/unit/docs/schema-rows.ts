import { z } from 'zod';

type Schema = {
  readonly type?: string | readonly string[]; readonly const?: unknown; readonly enum?: readonly unknown[]; readonly description?: string; readonly whole?: boolean; readonly pattern?: string;
  readonly properties?: Readonly<Record<string, Schema>>; readonly items?: Schema; readonly anyOf?: readonly Schema[]; readonly $ref?: string; readonly $defs?: Readonly<Record<string, Schema>>;
};

/** A longer list of words is not told in full. */
const MOST_WORDS = 8;
const DIGEST = '^[0-9a-f]{64}$';

/** What a value is, in a few words. */
function kindOf(schema: Schema): string {
  if (schema.const !== undefined) return `“${String(schema.const)}”`;
  if (schema.enum && schema.enum.length > MOST_WORDS) return `a word, one of ${schema.enum.length}: \`${String(schema.enum[0])}\`, \`${String(schema.enum[1])}\` …`;
  if (schema.enum) return schema.enum.map((value) => `\`${String(value)}\``).join(', ');
  if (schema.pattern === DIGEST) return 'SHA-256, 64 digits';
  if (schema.pattern?.startsWith('^\\d{4}-\\d{2}-\\d{2}T') === true) return 'instant, UTC';
  if (schema.type === 'array') return `list of ${schema.items ? kindOf(schema.items) : 'values'}`;
  const type = typeof schema.type === 'string' ? schema.type : schema.type?.find((one) => one !== 'null');
  return { string: 'text', number: 'number', integer: 'number', boolean: 'true or false', object: 'object' }[type ?? ''] ?? 'value';
}

/** The rows of a table that names every member of a schema: path, what it is, its description. A quantity is told once, not at every place. */
export function schemaRows(schema: z.ZodType): string[] {
  const root = z.toJSONSchema(schema, { reused: 'inline', io: 'output' }) as Schema;
  const rows: string[] = [];
  const isQuantity = (node: Schema): boolean => node.properties?.['value'] !== undefined && node.properties['uncertainty'] !== undefined;
  const walk = (node: Schema, path: string, description: string): void => {
    const options = node.anyOf?.filter((option) => option.type !== 'null');
    const nullable = (options !== undefined && options.length < (node.anyOf?.length ?? 0)) || (Array.isArray(node.type) && node.type.includes('null'));
    const inner = options?.length === 1 ? options[0]! : node;
    const whole = inner.whole === true || node.whole === true;
    const said = node.description ?? inner.description ?? description;
    const kind = whole ? 'object' : isQuantity(inner) ? 'quantity' : inner.anyOf ? 'object' : kindOf(inner);
    if (path !== '') rows.push(`| \`${path}\` | ${kind.replaceAll('|', '\\|')}${nullable ? ', or null' : ''} | ${said} |`);
    if (whole || isQuantity(inner) && path !== '') return;
    if (inner.properties) for (const [name, member] of Object.entries(inner.properties)) walk(member, path === '' ? name : `${path}.${name}`, '');
    if (inner.type === 'array' && inner.items?.properties && !isQuantity(inner.items)) for (const [name, member] of Object.entries(inner.items.properties)) walk(member, `${path}[].${name}`, '');
  };
  walk(root, '', '');
  return rows;
}
