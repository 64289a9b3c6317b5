import { resolve } from 'node:path';
import { build, type Plugin } from 'vite';
import config from '../../../vite.config.ts';

/** What of a source file stands otherwise in a build: the app as it may be some versions on. */
export type Change = { readonly file: string; readonly from: string; readonly to: string };

/** Every change must be found where it belongs, so that none is made in vain. */
function changed(changes: readonly Change[]): Plugin {
  const left = new Set(changes);
  return {
    name: 'changed',
    enforce: 'pre',
    transform(code, id) {
      const here = changes.filter(({ file }) => id.split('?')[0]?.endsWith(file));
      for (const each of here) {
        if (!code.includes(each.from)) throw new Error(`changed: ${each.file} has no ${each.from}`);
        left.delete(each);
      }
      return here.length === 0
        ? null
        : { code: here.reduce((text, { from, to }) => text.replace(from, () => to), code), map: null };
    },
    buildEnd() {
      if (left.size > 0) throw new Error(`changed: nothing in ${[...left].map(({ file }) => file).join()}`);
    },
  };
}

/** The whole app as another deployment: no script, style or worker has the name that it has in any other. Returns its folder. */
export async function deployment(id: string, changes: readonly Change[] = []): Promise<string> {
  const outDir = resolve('.tmp/deployments', id);
  const names = {
    entryFileNames: ({ name }: { name: string }) =>
      name === 'service-worker' ? '[name].js' : `assets/${id}-[name]-[hash].js`,
    chunkFileNames: `assets/${id}-[name]-[hash].js`,
    assetFileNames: `assets/${id}-[name]-[hash][extname]`,
  };
  await build({
    ...config,
    configFile: false,
    logLevel: 'error',
    plugins: [changed(changes), ...(config.plugins ?? [])],
    define: { __BUILD__: JSON.stringify(id) },
    worker: { rolldownOptions: { output: names } },
    build: {
      ...config.build,
      outDir,
      emptyOutDir: true,
      reportCompressedSize: false,
      rolldownOptions: { ...config.build?.rolldownOptions, output: names },
    },
  });
  return outDir;
}
