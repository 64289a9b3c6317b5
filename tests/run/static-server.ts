import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join } from 'node:path';
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

/** Files of one folder under one path, with the headers that the folder's own `_headers` asks for. Nothing else. */
export async function serveStatic({ root, port, at }: Options): Promise<StaticServer> {
  const server = createServer(async (request, response) => {
    const path = decodeURI(new URL(request.url ?? '/', 'http://here').pathname);
    const inside = path.startsWith(at) ? `/${path.slice(at.length)}` : null;
    const file = inside === null ? null : join(root(), inside.endsWith('/') ? `${inside}index.html` : inside);
    const body = file === null ? null : await readFile(file).catch(() => null);
    if (
      inside === null ||
      file === null ||
      body === null ||
      !['GET', 'HEAD'].includes(request.method ?? '')
    ) {
      response.writeHead(404, { 'Content-Type': 'text/plain' }).end('not here');
      return;
    }
    const rules = parseHeaders(await readFile(join(root(), '_headers'), 'utf8'));
    response.writeHead(200, {
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      'Content-Length': body.length,
      ...headersFor(rules, inside),
    });
    response.end(request.method === 'HEAD' ? undefined : body);
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
