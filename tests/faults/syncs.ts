/** Counts what the browser really asks the disk to keep, by watching its system calls. */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dropProfile, launch, newProfile, pageUrl, processesOf, tab } from './browser.ts';
import type { PlantName } from './build.ts';

export type Syncs = { readonly writes: number; readonly store: number; readonly copy: number };

export function canTrace(): boolean {
  return spawnSync('strace', ['-V']).status === 0;
}

export async function countSyncs(plant: PlantName): Promise<Syncs> {
  const writes = 20;
  const profile = newProfile();
  const folder = mkdtempSync(join(tmpdir(), 'faults-trace-'));
  const trace = join(folder, 'calls.txt');
  const context = await launch(profile);
  const page = await tab(context, await pageUrl(plant));
  await page.evaluate(async () => {
    await window.store.startCheck();
    await window.store.write(['first']);
  });
  const pids = processesOf(profile).flatMap((pid) => ['-p', String(pid)]);
  const tracer = spawn('strace', ['-f', '-y', '-e', 'trace=fsync,fdatasync', '-o', trace, ...pids], {
    stdio: 'ignore',
  });
  await new Promise((resolve) => setTimeout(resolve, 2000));
  const tookMs = await page.evaluate((count) => window.store.timed(count), writes);
  await new Promise((resolve) => setTimeout(resolve, 500));
  const ended = new Promise((resolve) => tracer.once('exit', resolve));
  tracer.kill('SIGINT');
  await ended;
  await context.close();
  const calls = readFileSync(trace, 'utf8').split('\n');
  rmSync(folder, { recursive: true });
  dropProfile(profile);
  if (tookMs.length !== writes) throw new Error('countSyncs: not all writes were made');
  return {
    writes,
    store: calls.filter((call) => /IndexedDB/.test(call)).length,
    copy: calls.filter((call) => /File System/.test(call)).length,
  };
}
