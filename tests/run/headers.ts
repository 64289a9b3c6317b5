/** Reads `_headers`, the plain format that several static hosts understand: a path, then indented `Name: value` lines. */
export type HeaderRule = { readonly path: string; readonly headers: Readonly<Record<string, string>> };

export function parseHeaders(text: string): HeaderRule[] {
  return text
    .split(/\n\s*\n/)
    .filter((block) => block.trim() !== '')
    .map((block) => {
      const [path = '', ...lines] = block.trim().split('\n');
      return { path, headers: Object.fromEntries(lines.map((line) => line.trim().split(/:\s*(.*)/, 2))) };
    });
}

export function headersFor(rules: readonly HeaderRule[], path: string): Record<string, string | undefined> {
  const fits = (rule: HeaderRule) =>
    rule.path.endsWith('*') ? path.startsWith(rule.path.slice(0, -1)) : path === rule.path;
  return Object.assign({}, ...rules.filter(fits).map((rule) => rule.headers));
}
