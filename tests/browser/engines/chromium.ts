import { chromium } from '@playwright/test';
import { findBrowser } from '../../run/find-browser.ts';
import type { Engine } from './engine.ts';

export async function beginChromium(): Promise<Engine | null> {
  const executablePath = await findBrowser();
  if (executablePath === null) return null;
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
  const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
  return {
    version: `Chromium ${browser.version()}`,
    goto: async (url) => void (await page.goto(url)),
    call: (source, argument) => page.evaluate(`(${source})(${JSON.stringify(argument)})`),
    close: () => browser.close(),
  };
}
