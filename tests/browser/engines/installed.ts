import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

function inPath(names: readonly string[]): string | null {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return names.flatMap((name) => folders.map((folder) => join(folder, name))).find(existsSync) ?? null;
}

/** The path of a program; on a machine of one's own (root, with apt) it is installed where it is missing, else null. */
export function foundOrInstalled(names: readonly string[], packages: readonly string[]): string | null {
  const found = inPath(names);
  if (found !== null) return found;
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return null;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const words of [
    ['update', '-q'],
    ['install', '-y', '-q', '--no-install-recommends', ...packages],
  ]) {
    const { status } = spawnSync('apt-get', words, { stdio: ['ignore', 2, 2], timeout: 150_000, env });
    if (status !== 0) return null;
  }
  return inPath(names);
}
