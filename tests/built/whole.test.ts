import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { buildId } from '../run/build-id.ts';
import { headersFor, parseHeaders } from '../run/headers.ts';

const page = readFileSync('dist/index.html', 'utf8');
const worker = readFileSync('dist/service-worker.js', 'utf8');
const files = readdirSync('dist', { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => `${entry.parentPath}/${entry.name}`.slice('dist/'.length));

test('the service worker keeps every file but itself and what only a server reads', () => {
  const kept = [...worker.matchAll(/\["([^"]+)","sha256-/g)].map(([, path]) =>
    path === './' ? 'index.html' : path,
  );
  const notKept = ['_headers', 'robots.txt', 'service-worker.js'];
  expect(new Set(kept)).toEqual(new Set(files.filter((file) => !notKept.includes(file))));
});

test('the service worker is one plain script and belongs to these sources', () => {
  expect(worker).not.toMatch(/\b(import|export|importScripts)\b/);
  expect(worker).toContain(buildId());
});

test('the page works under any path: no address in it or in the styles begins with a slash', () => {
  expect(page).not.toMatch(/(src|href)="\//);
  for (const file of files.filter((name) => name.endsWith('.css')))
    expect(readFileSync(`dist/${file}`, 'utf8')).not.toMatch(/url\(["']?\//);
});

test('the page carries the policy that the server sends, but for who may frame it', () => {
  const { 'Content-Security-Policy': sent = '' } = headersFor(
    parseHeaders(readFileSync('dist/_headers', 'utf8')),
    '/',
  );
  const [, inPage = ''] =
    /Content-Security-Policy" content="([^"]+)"/.exec(page.replaceAll('&#39;', "'")) ?? [];
  expect(inPage).toContain("default-src 'none'");
  expect(`${inPage}; frame-ancestors 'none'`).toBe(sent);
});

test('the page has no script, style or handler written into it', () => {
  expect(page).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\son\w+=|\sstyle=/i);
});

test('the manifest names icons that are there, in the sizes that it says', () => {
  const manifest: { icons: { src: string; sizes: string }[] } = JSON.parse(
    readFileSync('dist/manifest.webmanifest', 'utf8'),
  );
  for (const { src, sizes } of manifest.icons.filter(({ src }) => src.endsWith('.png'))) {
    const png = readFileSync(`dist/${src}`);
    expect(`${png.readUInt32BE(16)}x${png.readUInt32BE(20)}`, src).toBe(sizes);
  }
});
