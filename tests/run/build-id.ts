import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';

/** What the built app is made from; a change in any of it is another build. */
const SOURCES = ['index.html', 'package-lock.json', 'public', 'src', 'vite.config.ts'];

function filesOf(source: string): string[] {
  if (/\.\w+$/.test(source)) return [source];
  return readdirSync(source, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => `${entry.parentPath}/${entry.name}`.replaceAll('\\', '/'))
    .sort();
}

/** The package's version and a hash of its sources: the same sources give the same id anywhere, at any time. */
export function buildId(): string {
  const hash = createHash('sha256');
  for (const file of SOURCES.flatMap(filesOf)) hash.update(`${file}\n`).update(readFileSync(file));
  const { version }: { version: string } = JSON.parse(readFileSync('package.json', 'utf8'));
  return `${version}+${hash.digest('hex').slice(0, 10)}`;
}
