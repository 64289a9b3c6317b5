import puppeteer from 'puppeteer-core';
import type { Engine } from './engine.ts';
import { foundOrInstalled } from './installed.ts';

/** A Firefox as it is released, by WebDriver BiDi: Playwright drives only a build of its own. */
export async function beginFirefox(): Promise<Engine | null> {
  const executablePath = foundOrInstalled(['firefox-esr', 'firefox'], ['firefox-esr']);
  if (executablePath === null) return null;
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath,
    headless: true,
    timeout: 120_000,
    protocolTimeout: 120_000,
  });
  const page = await browser.newPage();
  return {
    version: await browser.version(),
    goto: async (url) => void (await page.goto(url, { timeout: 60_000 })),
    call: (source, argument) => page.evaluate(`(${source})(${JSON.stringify(argument)})`),
    close: () => browser.close(),
  };
}
