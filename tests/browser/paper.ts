import { spawnSync } from 'node:child_process';
import { expect, type Page } from '@playwright/test';

/** Pages and their sizes in points (1/72 inch), read from the file itself. */
export function pdfPages(pdf: Buffer): { count: number; sizesPt: string[] } {
  const text = pdf.toString('latin1');
  const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
  return {
    count: [...text.matchAll(/\/Type\s*\/Page\b(?!s)/g)].length,
    sizesPt: boxes.map(([, width, height]) => `${Math.round(Number(width))} x ${Math.round(Number(height))}`),
  };
}

/** The words of each page, by poppler's tool; null on a machine without it, where the sheets of the page speak alone. */
export function pdfWords(pdf: Buffer): string[] | null {
  const { status, stdout } = spawnSync('pdftotext', ['-layout', '-', '-'], {
    input: pdf,
    maxBuffer: 1 << 26,
  });
  if (status !== 0) return null;
  return stdout
    .toString()
    .split('\f')
    .slice(0, -1)
    .map((words) => words.replace(/\s+/g, ' '));
}

const SIZES_PT = { A4: '595 x 842', Letter: '612 x 792' } as const;

/** The record on paper: each sheet one page, lot and page on each, nothing cut off, nothing but the sheets. Returns its text. */
export async function printed(page: Page, paper: 'A4' | 'Letter', lot: string): Promise<string> {
  await page.emulateMedia({ media: 'print' });
  const sheets = await page.getByRole('region', { name: /^lot .* page \d+ of \d+$/ }).evaluateAll((all) =>
    all.map((sheet) => ({
      text: sheet.textContent ?? '',
      over: sheet.scrollHeight - sheet.clientHeight,
      aside: sheet.scrollWidth - sheet.clientWidth,
      cut: [...sheet.querySelectorAll('footer')].filter(
        (foot) => foot.getBoundingClientRect().bottom > sheet.getBoundingClientRect().bottom + 1,
      ).length,
    })),
  );
  expect(sheets.length).toBeGreaterThan(0);
  for (const [at, { text, over, aside, cut }] of sheets.entries()) {
    expect(text).toContain(`lot ${lot} · page ${at + 1} of ${sheets.length}`);
    expect({ sheet: at + 1, over: Math.max(0, over), aside: Math.max(0, aside), cut }).toEqual({
      sheet: at + 1,
      over: 0,
      aside: 0,
      cut: 0,
    });
  }
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const { count, sizesPt } = pdfPages(pdf);
  expect(count).toBe(sheets.length);
  expect([...new Set(sizesPt)]).toEqual([SIZES_PT[paper]]);
  const words = pdfWords(pdf);
  for (const [at, text] of (words ?? []).entries())
    expect(text).toContain(`lot ${lot} · page ${at + 1} of ${sheets.length}`);
  expect(words === null || words.length === sheets.length).toBe(true);
  await page.emulateMedia({ media: 'screen' });
  return words?.join('\n') ?? sheets.map(({ text }) => text).join('\n');
}
