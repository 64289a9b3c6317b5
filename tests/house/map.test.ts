import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const map = readFileSync('DEVELOPERS.md', 'utf8');

test('every room, folder and file that the map names is there', () => {
  const named = [...map.matchAll(/(?:src|tests|fixtures|public)\/[\w./-]*\w\/?/g)].map(([path]) => path);
  expect(named.length).toBeGreaterThan(10);
  expect(named.filter((path) => !existsSync(path))).toEqual([]);
});

test('every room has a line on the map', () => {
  const rooms = readdirSync('src', { withFileTypes: true }).filter((entry) => entry.isDirectory());
  expect(rooms.map(({ name }) => name).filter((name) => !new RegExp(`\\b${name}/`).test(map))).toEqual([]);
});

test('there is no drawer for what fits no room, and no barrel', () => {
  const drawers = /(^|\/)(utils?|helpers?|lib|types|common|index)(\.tsx?)?$/;
  expect(
    readdirSync('src', { recursive: true })
      .map(String)
      .filter((path) => drawers.test(path)),
  ).toEqual([]);
});
