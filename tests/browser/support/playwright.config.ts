import { defineConfig } from '@playwright/test';
import { findBrowser } from '../../run/find-browser.ts';

// The worker processes load this file too; they find the path that the first one left them.
process.env.CHROME_PATH ??= (await findBrowser()) ?? '';

const quiet = [
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-gpu',
  '--disable-quic',
  '--disable-sync',
  '--no-first-run',
];

export default defineConfig({
  testDir: '..',
  testMatch: '*.test.ts',
  outputDir: '../../../test-results',
  // Two at once on two cores, each file for itself; the limits leave room for a machine that is busy.
  workers: 2,
  timeout: 90_000,
  expect: { timeout: 15_000 },
  forbidOnly: true,
  reporter: 'list',
  use: {
    viewport: { width: 390, height: 844 },
    launchOptions: { executablePath: process.env.CHROME_PATH, args: quiet },
    serviceWorkers: 'allow',
  },
});
