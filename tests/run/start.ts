/** `npm start`: builds where the build is missing or older than its sources, then serves it. `--port 8080 --at /some/path/` */
import { existsSync, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { build } from 'vite';
import { buildId } from './build-id.ts';
import { serveStatic } from './static-server.ts';

const { values } = parseArgs({
  options: { port: { type: 'string', default: '4173' }, at: { type: 'string', default: '/' } },
});

const worker = 'dist/service-worker.js';
if (!existsSync(worker) || !readFileSync(worker, 'utf8').includes(buildId())) await build();

const at = `/${values.at}/`.replace(/\/+/g, '/');
try {
  const { url } = await serveStatic({ root: () => 'dist', port: Number(values.port), at });
  console.log(`\nGreenweight is at ${url}  (Ctrl+C stops the server; the app goes on without it)`);
} catch (error) {
  console.error(
    `\nPort ${values.port} cannot be had (npm start -- --port 0 takes any that is free): ${error}`,
  );
  process.exitCode = 1;
}
