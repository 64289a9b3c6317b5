import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import react from '@vitejs/plugin-react';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';
import { buildId } from './tests/run/build-id.ts';
import { headersFor, parseHeaders } from './tests/run/headers.ts';

/** The policy also stands in the page, for hosts that send no headers of ours. A page cannot say who may frame it. */
function policyInPage(): Plugin {
  const policy = headersFor(parseHeaders(readFileSync('public/_headers', 'utf8')), '/')[
    'Content-Security-Policy'
  ];
  if (policy === undefined) throw new Error('policyInPage: public/_headers has no Content-Security-Policy');
  const content = policy.replace(/; frame-ancestors [^;]*/, '');
  return {
    name: 'policy-in-page',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content },
        injectTo: 'head-prepend',
      },
    ],
  };
}

/** Writes the list of all other files of the build, each with its hash, into the service worker. */
function filesInServiceWorker(): Plugin {
  const notKept = ['_headers', 'robots.txt', 'service-worker.js'];
  return {
    name: 'files-in-service-worker',
    apply: 'build',
    writeBundle({ dir = 'dist' }) {
      const files = readdirSync(dir, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => relative(dir, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
        .filter((path) => !notKept.includes(path))
        .sort()
        .map((path) => {
          const hash = createHash('sha256')
            .update(readFileSync(join(dir, path)))
            .digest('base64');
          return [path === 'index.html' ? './' : path, `sha256-${hash}`];
        });
      const worker = join(dir, 'service-worker.js');
      writeFileSync(
        worker,
        readFileSync(worker, 'utf8').replace('__FILES__', () => JSON.stringify(files)),
      );
    },
  };
}

const tests = (name: string, include: string[], exclude: string[] = []) => ({
  extends: true as const,
  test: { name, include, exclude },
});

export default defineConfig({
  base: './',
  define: { __BUILD__: JSON.stringify(buildId()) },
  plugins: [react(), policyInPage(), filesInServiceWorker()],
  build: {
    target: 'es2022',
    modulePreload: { polyfill: false },
    assetsInlineLimit: 0,
    cssCodeSplit: false,
    rolldownOptions: {
      input: ['index.html', 'src/app/service-worker.ts'],
      output: {
        entryFileNames: ({ name }) => (name === 'service-worker' ? '[name].js' : 'assets/[name]-[hash].js'),
      },
    },
  },
  test: {
    environment: 'node',
    // Laws are tried on hundreds of cases, on machines that may be busy.
    testTimeout: 60_000,
    projects: [
      tests('unit', ['tests/**/*.test.{ts,tsx}'], ['tests/browser/**', 'tests/built/**', 'tests/faults/**']),
      tests('built', ['tests/built/**/*.test.ts']),
    ],
  },
});
