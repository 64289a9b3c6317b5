/** What has to work in every engine: from the empty book to a weighing that is there after the page was loaded anew. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Engine } from './engine.ts';

const inPage = readFileSync(join(import.meta.dirname, 'in-page.js'), 'utf8')
  .replace(/^\/\/.*\n/gm, '')
  .trim()
  .replace(/;$/, '');

type Act = 'press' | 'choose' | 'fill' | 'see' | 'titled' | 'shut';

const KEEPING = `async () => {
  const storage = navigator.storage;
  const databases = indexedDB.databases ? (await indexedDB.databases()).map(({ name }) => name) : [];
  return {
    secondCopy: typeof Worker === 'function' && typeof storage?.getDirectory === 'function',
    databases: databases.filter((name) => name.startsWith('greenweight')).sort(),
    trusted: 'trustedTypes' in window,
  };
}`;

export async function journey(engine: Engine, url: string): Promise<string> {
  const does = async (act: Act, name: string, text = '') => {
    const answer = await engine.call(inPage, { act, name, text });
    assert.equal(answer, 'done');
  };
  const keys = async (text: string) => {
    for (const sign of text) await does('press', sign === '.' ? 'decimal sign' : sign);
  };

  await engine.goto(url);
  await does('see', 'This book is empty');
  await does('press', 'Set up the bench');
  await does('titled', 'Set up the bench');
  for (const choice of ['Grams.*', '°C.*', 'Canada.*', 'A4.*']) await does('choose', choice);
  await does('fill', 'Initials.*', 'HK');
  await does('press', 'Save, then the scale');
  await does('titled', 'Scales and meters');
  await does('press', 'Add a scale');
  await does('choose', '1 g');
  await does('fill', 'Name.*', 'Bench scale');
  await does('press', 'Save');
  await does('shut', '');

  await engine.goto(`${url}#/formulas`);
  await does('press', 'Take the starting formula');
  await does('titled', 'Caraway and pepper, invented example');
  await does('press', 'Open a batch');
  await does('titled', 'Open a batch');
  await does('press', 'Open the batch');
  await does('titled', 'Weigh-out');
  await does('press', 'Lean.*');
  await keys('2411');
  await does('press', 'Add this weight');
  await does('shut', '');
  await does('see', '2.?411');

  await engine.call('async () => { location.reload(); }', null);
  await new Promise((resolve) => setTimeout(resolve, 1000));
  await does('titled', 'Weigh-out');
  await does('see', '2.?411');

  await engine.goto(`${url}#/kit/keeping`);
  await does('press', 'Back up now');
  await does('see', 'It was read back: \\d+ entries');
  const seen = await engine.call(KEEPING, null);
  return `set up, formula, batch, weighed, found after loading anew, backup read back; ${JSON.stringify(seen)}`;
}
