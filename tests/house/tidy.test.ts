import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { code, lines, sources } from './sources.ts';

const own = 'tests/house/tidy.test.ts';
const everything = [
  ...['src', 'tests', 'public', 'fixtures', '.ci', '.github'].flatMap((at) => sources(at, /(?<!\.png)$/)),
  ...readdirSync('.', { withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ name }) => ({ path: name, text: readFileSync(name, 'utf8') })),
].filter(({ path }) => path !== own);
const programs = everything.filter(({ path }) => /\.tsx?$/.test(path));

test('nothing is left undone, silenced or left out', () => {
  const marks = /\b(TODO|FIXME|XXX)\b|@ts-(ignore|expect-error|nocheck)|biome-ignore|\.(skip|only|todo)\(/;
  expect(lines(programs, marks)).toEqual([]);
  const bare = programs.map(({ path, text }) => ({ path, text: code(text) }));
  expect(lines(bare, /(:|<|\bas) ?any\b/)).toEqual([]);
});

test('no path of a machine and no address of a package registry stands anywhere', () => {
  expect(lines(everything, /(^|[\s'"`(=])\/(work|tmp|root|home)\/|registry\.\w+\.\w+/)).toEqual([]);
  expect(readFileSync('package-lock.json', 'utf8')).not.toContain('"resolved"');
});

test('every package is pinned to one version', () => {
  const { dependencies, devDependencies } = JSON.parse(readFileSync('package.json', 'utf8'));
  const versions = Object.entries<string>({ ...dependencies, ...devDependencies });
  expect(versions.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version))).toEqual([]);
});
