/** `npm test`: everything, one step after the other, then one line with what passed and what failed, as counted by the tools. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { addUp, type Counts, fromPlaywright, fromVitest } from './count.ts';
import { findBrowser } from './find-browser.ts';

const reports = '.tmp/reports';
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

/** True where the script ended well. */
function npmRun(script: string, flags: string[] = [], env: Record<string, string> = {}): boolean {
  console.log(`\n== ${script}`);
  const shell = process.platform === 'win32';
  const words = ['run', '-s', script, '--', ...flags];
  return spawnSync('npm', words, { stdio: 'inherit', shell, env: { ...process.env, ...env } }).status === 0;
}

function check(script: string): Counts {
  return npmRun(script) ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
}

function vitest(script: string): Counts {
  const report = `${reports}/${script}.json`;
  const flags = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  return counted(npmRun(script, flags), report, fromVitest);
}

function playwright(script: string, CHROME_PATH: string): Counts {
  const report = `${reports}/${script}.json`;
  const env = { CHROME_PATH, PLAYWRIGHT_JSON_OUTPUT_NAME: report };
  return counted(npmRun(script, ['--reporter=list,json'], env), report, fromPlaywright);
}

/** A tool that ended badly although its report shows no failure, or that wrote no report, is one failure. */
function counted(endedWell: boolean, report: string, read: (report: unknown) => Counts): Counts {
  let counts: Counts = { passed: 0, failed: 0 };
  try {
    counts = read(JSON.parse(readFileSync(report, 'utf8')));
  } catch (error) {
    console.error(`${report}: ${error instanceof Error ? error.message : error}`);
  }
  return endedWell || counts.failed > 0 ? counts : { ...counts, failed: 1 };
}

const notRun: string[] = [];
const results = [check('types'), check('lint'), vitest('unit')];
const build = check('build');
results.push(build);

const browser = build.failed === 0 ? await findBrowser() : null;
if (build.failed > 0) notRun.push('built, browser, faults: there is no build');
else results.push(vitest('built'));
if (build.failed === 0 && browser === null)
  notRun.push('browser, faults: no Chromium was found, and none could be installed');
if (browser !== null) results.push(playwright('browser', browser), playwright('faults', browser));

const { passed, failed } = addUp(results);
for (const line of notRun) console.log(`not run: ${line}`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : notRun.length > 0 ? 2 : 0;
