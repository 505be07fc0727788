/**
 * The modules that a CommonJS bundle loads and that are not on the list.
 * @param {string} code
 * @param {readonly string[]} allowed
 * @returns {string[]} each once, sorted
 */
export function strayRequires(code, allowed) {
  const found = [...code.matchAll(/\brequire\(\s*["'`]([^"'`]+)["'`]\s*\)/g)].map((match) => match[1] ?? '');
  return [...new Set(found)].filter((name) => !allowed.includes(name)).sort();
}
