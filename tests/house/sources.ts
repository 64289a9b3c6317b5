import { readdirSync, readFileSync } from 'node:fs';

export type Source = { readonly path: string; readonly text: string };

/** The files under a folder whose names end as asked, with their text. */
export function sources(folder: string, ending = /\.(ts|tsx|css)$/): Source[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && ending.test(entry.name))
    .map((entry) => `${entry.parentPath}/${entry.name}`.replaceAll('\\', '/'))
    .map((path) => ({ path, text: readFileSync(path, 'utf8') }));
}

/** The same text with the comments blanked, line for line. */
export function code(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, ' '))
    .replace(/(?<=^|\s)\/\/[^\n]*/g, '');
}

/** Every line that a pattern is found in, as `path:line: text`. */
export function lines(all: readonly Source[], pattern: RegExp): string[] {
  return all.flatMap(({ path, text }) =>
    text.split('\n').flatMap((line, at) => (pattern.test(line) ? [`${path}:${at + 1}: ${line.trim()}`] : [])),
  );
}
