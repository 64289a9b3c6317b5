import { resolve } from 'node:path';
import { build } from 'vite';
import config from '../../../vite.config.ts';

/** Builds update-page as the app itself is built, under a build id of the test's choosing. Returns its folder. */
export async function buildPage(id: string): Promise<string> {
  const root = resolve('tests/browser/support/update-page');
  const outDir = resolve('.tmp/update-page', id);
  const input = [resolve(root, 'index.html'), resolve('src/app/service-worker.ts')];
  await build({
    ...config,
    configFile: false,
    logLevel: 'warn',
    root,
    publicDir: resolve('public'),
    define: { __BUILD__: JSON.stringify(id) },
    build: {
      ...config.build,
      outDir,
      emptyOutDir: true,
      rolldownOptions: { ...config.build?.rolldownOptions, input },
    },
  });
  return outDir;
}
