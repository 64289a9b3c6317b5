/**
 * The fault tests, in a real browser: `node --import tsx tests/faults/run.ts [case ...] [--kills=500] [--entries=20000] [--seed=1]`.
 * Without names all cases run; without numbers in the short form.
 */

import { stopServing } from './browser.ts';
import { cases } from './cases.ts';

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const setting = (name: string, otherwise: number) => {
  const word = process.argv.find((each) => each.startsWith(`--${name}=`));
  return word === undefined ? otherwise : Number(word.split('=')[1]);
};
const settings = {
  kills: setting('kills', 23),
  entries: setting('entries', 5000),
  seed: setting('seed', Math.trunc(Date.now() % 1_000_000)),
};

let passed = 0;
let failed = 0;
console.log(`seed ${settings.seed}`);
for (const { name, run } of cases) {
  if (asked.length > 0 && !asked.some((word) => name.includes(word))) continue;
  const from = Date.now();
  try {
    const said = await run(settings);
    if (said === null) {
      console.log(`not run: ${name}`);
      continue;
    }
    passed += 1;
    console.log(`ok   ${name}: ${said} (${((Date.now() - from) / 1000).toFixed(1)} s)`);
  } catch (error) {
    failed += 1;
    console.log(`FAIL ${name}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
  }
}
await stopServing();
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
