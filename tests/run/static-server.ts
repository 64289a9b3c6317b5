import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';
import { headersFor, parseHeaders } from './headers.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.woff2': 'font/woff2',
};

export type StaticServer = { readonly url: string; readonly port: number; stop(): Promise<void> };

type Options = {
  /** The folder to serve; asked for each request, so that a test can put another build in its place. */
  root: () => string;
  /** 0 takes any free one. */
  port: number;
  /** The path that the app lies under, with a slash at both ends. */
  at: string;
};

/** The path as the folder knows it, beginning with a slash; null for what lies elsewhere or cannot be read. */
function pathIn(url: string, at: string): string | null {
  try {
    const path = decodeURI(new URL(url, 'http://here').pathname);
    return path.startsWith(at) ? `/${path.slice(at.length)}` : null;
  } catch {
    return null;
  }
}

function fileIn(root: string, path: string): string | null {
  const file = resolve(root, `.${path.endsWith('/') ? `${path}index.html` : path}`);
  return file.startsWith(resolve(root) + sep) ? file : null;
}

/** Files of one folder under one path, with the headers that the folder's own `_headers` asks for. Nothing else. */
export async function serveStatic({ root, port, at }: Options): Promise<StaticServer> {
  const server = createServer(async ({ method = '', url = '/' }, response) => {
    const path = pathIn(url, at);
    const file = path === null ? null : fileIn(root(), path);
    const body = file === null ? null : await readFile(file).catch(() => null);
    if (path === null || file === null || body === null || !['GET', 'HEAD'].includes(method)) {
      response.writeHead(404, { 'Content-Type': 'text/plain' }).end('not here');
      return;
    }
    const rules = parseHeaders(await readFile(join(root(), '_headers'), 'utf8'));
    response.writeHead(200, {
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      'Content-Length': body.length,
      ...headersFor(rules, path),
    });
    response.end(method === 'HEAD' ? undefined : body);
  });
  await new Promise<void>((listening, failed) => {
    server.once('error', failed).listen(port, '127.0.0.1', listening);
  });
  const address = server.address();
  if (address === null || typeof address === 'string') throw new Error('serveStatic: no port was given');
  return {
    url: `http://127.0.0.1:${address.port}${at}`,
    port: address.port,
    stop: () =>
      new Promise((stopped, failed) => {
        server.close((error) => (error ? failed(error) : stopped()));
        server.closeAllConnections();
      }),
  };
}
