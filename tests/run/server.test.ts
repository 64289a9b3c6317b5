import { request } from 'node:http';
import { expect, test } from 'vitest';
import { serveStatic } from './static-server.ts';

/** As typed: `fetch` would tidy the path first. */
function status(port: number, path: string): Promise<number | undefined> {
  return new Promise((answered, failed) =>
    request({ host: '127.0.0.1', port, path }, (response) => answered(response.resume().statusCode))
      .on('error', failed)
      .end(),
  );
}

test('the server gives the files of its folder under its path, and nothing else whatever is asked', async () => {
  const server = await serveStatic({ root: () => 'public', port: 0, at: '/a/b/' });
  const at = (path: string) => status(server.port, path);
  expect(await at('/a/b/icon.svg?x')).toBe(200);
  for (const path of ['/icon.svg', '/a/b/', '/a/b/none', '/a/b/%E0%A4%A', '/a/b/..%2fpackage.json'])
    expect(await at(path), path).toBe(404);
  for (const path of ['/a/b/../package.json', '/a/b/../../../package.json', '/a/b/%2e%2e/package.json'])
    expect(await at(path), path).toBe(404);
  await server.stop();
  await expect(at('/a/b/icon.svg')).rejects.toThrow();
});
