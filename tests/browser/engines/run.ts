/** The main journey in three engines, on the built app: `npm run engines`. What could not run says "not run". */
import { serveStatic } from '../../run/static-server.ts';
import { beginChromium } from './chromium.ts';
import type { BeginEngine } from './engine.ts';
import { beginFirefox } from './firefox.ts';
import { journey } from './journey.ts';
import { beginWebkit } from './webkit.ts';

const ENGINES: readonly { readonly name: string; readonly begin: BeginEngine }[] = [
  { name: 'chromium', begin: beginChromium },
  { name: 'firefox', begin: beginFirefox },
  { name: 'webkit', begin: beginWebkit },
];

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const server = await serveStatic({ root: () => process.env.APP_FOLDER ?? 'dist', port: 0, at: '/' });
let passed = 0;
let failed = 0;
for (const { name, begin } of ENGINES) {
  if (asked.length > 0 && !asked.includes(name)) continue;
  const fromMs = Date.now();
  try {
    const engine = await begin();
    if (engine === null) {
      console.log(`not run: ${name}`);
      continue;
    }
    try {
      const said = await journey(engine, server.url);
      passed += 1;
      console.log(`ok   ${engine.version}: ${said} (${((Date.now() - fromMs) / 1000).toFixed(1)} s)`);
    } finally {
      await engine.close();
    }
  } catch (error) {
    failed += 1;
    console.log(
      `FAIL ${name}: ${error instanceof Error ? (error.stack ?? error.message) + (error.cause ? ` (${String(error.cause)})` : '') : String(error)}`,
    );
  }
}
await server.stop();
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
