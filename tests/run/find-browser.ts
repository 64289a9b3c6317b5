import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';

const require = createRequire(import.meta.url);
const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'chrome.exe',
  'msedge.exe',
];
/** The last one that runs on Node 20; put in only where nothing else was found. */
const SHIPPED = '@sparticuz/chromium@147.0.0';

function runs(path: string | undefined): path is string {
  if (path === undefined || !existsSync(path)) return false;
  if (process.platform === 'win32') return true;
  const { status, stdout } = spawnSync(path, ['--version'], { timeout: 20_000, encoding: 'utf8' });
  return status === 0 && /\d+\.\d+/.test(stdout);
}

function does(command: string, words: string[]): boolean {
  console.error(`finding a browser: ${command} ${words.join(' ')}`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const shell = process.platform === 'win32';
  return spawnSync(command, words, { stdio: ['ignore', 2, 2], timeout: 400_000, env, shell }).status === 0;
}

function installed(): string | undefined {
  const { PATH = '', PROGRAMFILES = '', HOME = '' } = process.env;
  const folders = [...PATH.split(delimiter), `${PROGRAMFILES}/Google/Chrome/Application`];
  const mac = ['Google Chrome', 'Chromium', 'Microsoft Edge'].flatMap((name) =>
    ['/Applications', `${HOME}/Applications`].map((at) => `${at}/${name}.app/Contents/MacOS/${name}`),
  );
  return [...folders.flatMap((folder) => NAMES.map((name) => join(folder, name))), ...mac].find(runs);
}

async function playwrightsCopy(): Promise<string | undefined> {
  const { chromium } = await import('@playwright/test');
  return [chromium.executablePath()].find(runs);
}

async function downloaded(): Promise<string | undefined> {
  const cli = join(require.resolve('playwright-core/package.json'), '..', 'cli.js');
  return does(process.execPath, [cli, 'install', 'chromium']) ? playwrightsCopy() : undefined;
}

function fromTheSystem(): string | undefined {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return undefined;
  const got =
    does('apt-get', ['update', '-q']) &&
    does('apt-get', ['install', '-y', '-q', '--no-install-recommends', 'chromium', 'fonts-liberation']);
  return got ? installed() : undefined;
}

async function shipped(): Promise<string | undefined> {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  if (!does('npm', ['install', '--no-save', '--ignore-scripts', SHIPPED])) return undefined;
  // Makes the package unpack the system libraries that it brings along, for a machine that has none.
  process.env.AWS_LAMBDA_JS_RUNTIME ??= 'nodejs22.x';
  const { default: chromium }: { default: { executablePath(): Promise<string> } } = await import(
    require.resolve('@sparticuz/chromium')
  );
  return [await chromium.executablePath()].find(runs);
}

/** The path of a Chromium, got by itself where there is none; null where none could be got. */
export async function findBrowser(): Promise<string | null> {
  const { CHROME_PATH } = process.env;
  if (CHROME_PATH) return runs(CHROME_PATH) ? CHROME_PATH : null;
  for (const way of [installed, playwrightsCopy, downloaded, fromTheSystem, shipped]) {
    const path = await way();
    if (path !== undefined) return path;
  }
  return null;
}
