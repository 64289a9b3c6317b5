/**
 * Keeps the whole build on the phone and answers from there: a start needs no network.
 * One cache a build. An older build's cache stays for as long as an open page runs that build (each page holds a lock
 * of the cache's name), so that a page left open on the bench still finds its lazy parts after another took the update.
 */
declare const self: ServiceWorkerGlobalScope;
declare const __BUILD__: string;
/** Every file of the build but this one, with its hash; written in when the app is built. */
declare const __FILES__: readonly (readonly [path: string, integrity: string])[];

const { scope } = self.registration;
const family = `greenweight ${scope} `;
const own = family + __BUILD__;

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim().then(tidy)));
self.addEventListener('message', (event) => {
  if (event.data?.type === 'SKIP_WAITING') event.waitUntil(self.skipWaiting());
  if (event.data === 'tidy') event.waitUntil(tidy());
});
self.addEventListener('fetch', (event) => {
  const { method, url } = event.request;
  if (method === 'GET' && url.startsWith(scope)) event.respondWith(answer(event.request));
});

/**
 * All or nothing, each file held against its hash: a half-made deployment or a hotel's log-in page never gets in.
 * The browser's own cache is asked about nothing, since what a hash refused once would lie there for a year.
 */
async function keepAll(): Promise<void> {
  const cache = await caches.open(own);
  const keep = async ([path, integrity]: readonly [string, string]) => {
    const url = new URL(path, scope).href;
    if (await cache.match(url)) return;
    const response = await fetch(url, { integrity, cache: 'no-cache' });
    if (!response.ok) throw new Error(`keepAll: ${url} answered ${response.status}`);
    await cache.put(url, response);
  };
  await Promise.all(__FILES__.map(keep));
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(own);
  const shell = request.mode === 'navigate' && isShell(request.url) ? await cache.match(scope) : undefined;
  return shell ?? (await cache.match(request)) ?? (await caches.match(request)) ?? fetch(request);
}

function isShell(url: string): boolean {
  return /^(index\.html)?([?#]|$)/.test(url.slice(scope.length));
}

async function tidy(): Promise<void> {
  if (self.registration.installing || self.registration.waiting) return;
  const { held = [] } = await self.navigator.locks.query();
  const inUse = new Set([own, ...held.map((lock) => lock.name)]);
  const names = (await caches.keys()).filter((name) => name.startsWith(family) && !inUse.has(name));
  await Promise.all(names.map((name) => caches.delete(name)));
}

export {};
