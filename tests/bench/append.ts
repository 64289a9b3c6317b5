/**
 * What two copies and a chain cost a weighing: `node --import tsx tests/bench/append.ts`. The whole way of an append against one
 * bare strict add to a database beside it, in turns, in one page; at most three times as long is what we allow.
 */
import { dropProfile, launch, newProfile, pageUrl, stopServing, tab } from '../faults/browser.ts';

const ROUNDS = 200;
const MOST_TIMES = 3;

const profile = newProfile();
const context = await launch(profile);
const page = await tab(context, await pageUrl());
const { whole, bare } = await page.evaluate(async (rounds) => {
  await window.store.startCheck();
  const open = indexedDB.open('bare', 1);
  await new Promise((resolve) => {
    open.onupgradeneeded = () => open.result.createObjectStore('rows', { autoIncrement: true });
    open.onsuccess = resolve;
  });
  const took: { whole: number[]; bare: number[] } = { whole: [], bare: [] };
  for (let round = -20; round < rounds; round++) {
    let from = performance.now();
    await window.store.write([`weighed ${round}`]);
    const wholeMs = performance.now() - from;
    from = performance.now();
    const transaction = open.result.transaction('rows', 'readwrite', { durability: 'strict' });
    transaction.objectStore('rows').add({ text: `weighed ${round}`, pad: 'x'.repeat(500) });
    await new Promise((resolve) => transaction.addEventListener('complete', resolve));
    const bareMs = performance.now() - from;
    // The first ones warm up what is compiled on the way.
    if (round >= 0) {
      took.whole.push(wholeMs);
      took.bare.push(bareMs);
    }
  }
  return took;
}, ROUNDS);
await context.close();
dropProfile(profile);
await stopServing();

const at = (times: readonly number[], part: number) =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length * part)] ?? Number.NaN;
let within = true;
for (const part of [0.5, 0.95]) {
  const [wholeMs, bareMs] = [at(whole, part), at(bare, part)];
  const times = wholeMs / bareMs;
  within &&= times <= MOST_TIMES;
  console.log(
    `p${part * 100}: ${wholeMs.toFixed(1)} ms in both copies, ${bareMs.toFixed(1)} ms bare: ${times.toFixed(2)} times`,
  );
}
console.log(within ? `within ${MOST_TIMES} times` : `more than ${MOST_TIMES} times`);
process.exitCode = within ? 0 : 1;
