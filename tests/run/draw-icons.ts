/** Draws the manifest's PNG icons from public/icon.svg: `node --import tsx tests/run/draw-icons.ts`, after the SVG was changed. */
import { readFileSync } from 'node:fs';
import { chromium } from '@playwright/test';
import { findBrowser } from './find-browser.ts';

const svg = readFileSync('public/icon.svg', 'utf8');
/** A launcher cuts its own shape: paper to the edge, and the piece inside the circle that every shape leaves. */
const maskable = svg
  .replace('rx="96"', '')
  .replace(
    '<g id="piece">',
    '<g id="piece" transform="translate(256 256) scale(0.85) translate(-256 -268)">',
  );

const icons = [
  { name: 'icon-192', drawing: svg, sizePx: 192 },
  { name: 'icon-512', drawing: svg, sizePx: 512 },
  { name: 'icon-maskable-512', drawing: maskable, sizePx: 512 },
];

const browser = await chromium.launch({ executablePath: (await findBrowser()) ?? '' });
for (const { name, drawing, sizePx } of icons) {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block }</style>${drawing}`);
  await page.screenshot({ path: `public/${name}.png`, omitBackground: true });
  await page.close();
}
await browser.close();
