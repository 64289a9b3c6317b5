/**
 * Imported first in main.tsx. The page's policy lets no text become a script or markup; the one thing let through is
 * the address of a worker that lies with the app itself. It is the default policy so that
 * `new Worker(new URL('./x.ts', import.meta.url), { type: 'module' })` stays spelled as the build tool knows it.
 */
declare global {
  interface Window {
    /** Missing from the compiler's own list; absent in browsers that do not enforce it. */
    readonly trustedTypes?: {
      createPolicy(name: 'default', rules: { createScriptURL(input: string): string }): unknown;
    };
  }
}

const home = new URL('./', document.baseURI).href;

function createScriptURL(input: string): string {
  const { href } = new URL(input, document.baseURI);
  if (!href.startsWith(home)) throw new TypeError(`createScriptURL: ${href} is not part of this app`);
  return href;
}

window.trustedTypes?.createPolicy('default', { createScriptURL });

export {};
