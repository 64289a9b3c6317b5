/** `npm test`: everything, one step after the other, then one line with what passed and what failed, as counted by the tools. */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { addUp, type Counts, fromLastLine, fromPlaywright, fromVitest } from './count.ts';
import { findBrowser } from './find-browser.ts';

// Absolute, since one of the tools takes it from its own folder.
const reports = resolve('.tmp/reports');
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

type Ended = { readonly well: boolean; readonly said: string };

/** Runs a script of package.json, shows what it says, and keeps it. */
async function npmRun(
  script: string,
  flags: string[] = [],
  env: Record<string, string> = {},
): Promise<Ended> {
  console.log(`\n== ${script}`);
  const child = spawn('npm', ['run', '-s', script, '--', ...flags], {
    stdio: ['ignore', 'pipe', 'inherit'],
    shell: process.platform === 'win32',
    env: { ...process.env, ...env },
  });
  let said = '';
  child.stdout.on('data', (part: Buffer) => {
    process.stdout.write(part);
    said += part.toString();
  });
  const code = await new Promise((ended) => child.once('close', ended));
  return { well: code === 0, said };
}

async function check(script: string): Promise<Counts> {
  const { well } = await npmRun(script);
  return well ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

async function vitest(script: string): Promise<Counts> {
  const report = `${reports}/${script}.json`;
  const flags = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const { well } = await npmRun(script, flags);
  return counted(script, well, () => fromVitest(JSON.parse(readFileSync(report, 'utf8'))));
}

async function playwright(script: string, CHROME_PATH: string): Promise<Counts> {
  const report = `${reports}/${script}.json`;
  const env = { CHROME_PATH, PLAYWRIGHT_JSON_OUTPUT_NAME: report };
  const { well } = await npmRun(script, ['--reporter=list,json'], env);
  return counted(script, well, () => fromPlaywright(JSON.parse(readFileSync(report, 'utf8'))));
}

/** A runner of our own: it says on a line of its own what it could not run, and on its last line what passed and failed. */
async function ownRunner(script: string, CHROME_PATH: string): Promise<Counts> {
  const { well, said } = await npmRun(script, [], { CHROME_PATH });
  lacking.push(...[...said.matchAll(/^not run: (.+)$/gm)].map(([, name]) => `${script}: ${name}`));
  return counted(script, well, () => fromLastLine(said));
}

/** A tool that ended badly although it counts no failure, or that gave no count, is one failure. */
function counted(script: string, well: boolean, read: () => Counts): Counts {
  let counts: Counts = { passed: 0, failed: 0 };
  try {
    counts = read();
  } catch (error) {
    console.error(`${script}: ${error instanceof Error ? error.message : error}`);
    return { passed: 0, failed: 1 };
  }
  return well || counts.failed > 0 ? counts : { ...counts, failed: 1 };
}

/** What this machine lacks the means for (another engine, a disk of its own to fill): said, and no failure. */
const lacking: string[] = [];
const notRun: string[] = [];
const results = [await check('types'), await check('lint'), await vitest('unit')];
const build = await check('build');
results.push(build);

if (build.failed > 0) notRun.push('built, browser, engines, faults: there is no build');
else {
  results.push(await vitest('built'));
  const browser = await findBrowser();
  if (browser === null)
    notRun.push('browser, engines, faults: no Chromium was found, and none could be installed');
  else
    results.push(
      await playwright('browser', browser),
      await ownRunner('engines', browser),
      await ownRunner('faults', browser),
    );
}

const { passed, failed } = addUp(results);
for (const line of [...notRun, ...lacking]) console.log(`not run: ${line}`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : notRun.length > 0 ? 2 : 0;
