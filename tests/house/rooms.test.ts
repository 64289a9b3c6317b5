import { expect, test } from 'vitest';
import { code, sources } from './sources.ts';

/** Who may import whom: `#` rooms (or one file of a room), then packages. */
const MAY: Readonly<Record<string, string>> = {
  core: '',
  record: '#core zod/mini @noble/hashes',
  words: '#core date-fns',
  store: '#core #record dexie dexie-react-hooks react react-dom uuid zod/mini',
  files: '#core #record papaparse uqr fflate',
  ui: '#core/units.ts #words react recharts',
  screens: '#core #record #words #store #files #ui react',
  app: '#core #record #words #store #files #ui #screens react react-dom wouter workbox-window @fontsource-variable',
};

/** Inside a room, and inside one screen, files are near (`./x.ts`) or spelled from the room down. */
function allowed(path: string, name: string): boolean {
  const [, room = '', folder = ''] = path.split('/');
  if (/^\.|^#/.test(name) && !/\.(ts|tsx|css)$/.test(name)) return false;
  if (name.startsWith('./')) return !name.includes('/../');
  const own = room === 'screens' ? `#screens/${folder}` : `#${room}`;
  return [own, ...(MAY[room] ?? '').split(' ')].some((may) => name === may || name.startsWith(`${may}/`));
}

test('each room imports only what stands beneath it, spelled from the room down', () => {
  const IMPORT = /(?:\bfrom|\bimport|\bimport\(|new URL\((?='[^'\s]+', import))\s*'([^'\s]+)'/g;
  const imports = sources('src', /\.tsx?$/).flatMap(({ path, text }) =>
    [...code(text).matchAll(IMPORT)].map(([, name = '']) => [path, name] as const),
  );
  expect(imports.length).toBeGreaterThan(20);
  expect(imports.filter((pair) => !allowed(...pair)).map((pair) => pair.join(' imports '))).toEqual([]);
});
