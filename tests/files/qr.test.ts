import { readFileSync } from 'node:fs';
import jsQR from 'jsqr';
import { createElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { readFormulaLink, writeFormulaLink } from '#files/formula-link.ts';
import { qrOf } from '#files/qr.ts';
import { QrDrawing } from '#ui/drawings/QrDrawing.tsx';
import { qrPath } from '#ui/drawings/qr-path.ts';
import { LONG_FORMULA } from './long-formula.ts';

const BASE = 'https://book.example.org/greenweight/index.html';

const PARENT = {
  formula: 'formula:018cdc2f-9a31-7c54-a0b1-8e5d1f6a9cbb',
  entry: '018cdc30-11f2-7be8-8d3a-5c7e90ab1d0c',
} as const;

/** The code as a camera would have it: dark on light, with its quiet zone, some pixels a module. */
function raster(modules: readonly (readonly boolean[])[], pixels: number, dark = (on: boolean) => on) {
  const side = (modules.length + 8) * pixels;
  const image = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const [row, cells] of modules.entries()) {
    for (const [column, on] of cells.entries()) {
      if (!dark(on)) continue;
      for (let at = 0; at < pixels * pixels; at += 1) {
        const x = (column + 4) * pixels + (at % pixels);
        const y = (row + 4) * pixels + Math.floor(at / pixels);
        image.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
      }
    }
  }
  return { image, side };
}

/** The modules that a path of bars darkens, read back from its own text. */
function modulesOf(path: string, side: number): boolean[][] {
  const modules = Array.from({ length: side }, () => Array.from({ length: side }, () => false));
  for (const [, x, y, length] of path.matchAll(/M(\d+) (\d+)h(\d+)v1h-\d+z/g))
    modules[Number(y)]?.fill(true, Number(x), Number(x) + Number(length));
  return modules;
}

async function codeOf(text: string) {
  const qr = await qrOf(text);
  if (!qr.ok) throw new Error(`codeOf: ${qr.code}`);
  return qr;
}

describe('a formula as a QR code', () => {
  it('of 25 lines fits one code that a phone can read, and comes out of the camera as it went in', async () => {
    const written = await writeFormulaLink({ formula: LONG_FORMULA, base: BASE, from: PARENT });
    if (!written.ok) throw new Error(written.problem.code);
    const qr = await codeOf(written.link);
    expect(qr.version).toBeLessThanOrEqual(20);
    const { image, side } = raster(qr.modules, 4);
    const seen = jsQR(image, side, side);
    expect(seen?.version).toBe(qr.version);
    expect(seen?.data).toBe(written.link);
    expect(await readFormulaLink(seen?.data ?? '')).toEqual({
      ok: true,
      formula: LONG_FORMULA,
      from: PARENT,
    });
  });

  it('is still read with a stain on it', async () => {
    const qr = await codeOf(`${BASE}#/formulas/from/AbCd`);
    expect(qr.ecc).toBe('M');
    const stained = qr.modules.map((row, y) =>
      row.map((on, x) => (x > 14 && x < 18 && y > 14 && y < 18 ? !on : on)),
    );
    expect(stained).not.toEqual(qr.modules);
    const { image, side } = raster(stained, 6);
    expect(jsQR(image, side, side)?.data).toBe(`${BASE}#/formulas/from/AbCd`);
  });

  /** Version 25 at level L holds 1273 bytes: ISO/IEC 18004, table of capacities (from memory, high confidence). */
  it('is not made where it would be too fine to read', async () => {
    expect(await qrOf('a'.repeat(1273))).toMatchObject({ ok: true, version: 25, ecc: 'L' });
    expect(await qrOf('a'.repeat(1274))).toEqual({ ok: false, code: 'too-long' });
  });

  it('is drawn module for module, with a name and a quiet rim', async () => {
    const { modules } = await codeOf('#/today');
    const drawn = modulesOf(qrPath(modules), modules.length);
    expect(drawn).toEqual(modules);
    const html = renderToStaticMarkup(createElement(QrDrawing, { modules, label: 'Opens Today' }));
    expect(html).toContain(`viewBox="-4 -4 ${modules.length + 8} ${modules.length + 8}"`);
    expect(html).toContain('role="img" aria-label="Opens Today"');
  });

  it('is black on white in the dark too', () => {
    const css = readFileSync('src/ui/drawings/QrDrawing.module.css', 'utf8');
    expect(css).toMatch(/background: #fff;/);
    expect(css).toMatch(/fill: #000;/);
    expect(css).not.toMatch(/light-dark|var\(--(?!radius)/);
  });
});
