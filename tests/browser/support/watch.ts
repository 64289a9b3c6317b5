import type { BrowserContext } from '@playwright/test';

/** What went wrong in pages behind the test's back; every test ends by asking that there was nothing. */
export type Watch = {
  readonly complaints: readonly string[];
  over(context: BrowserContext): Promise<void>;
  /** For a test that provokes one: a complaint that matches is no complaint. */
  allow(pattern: RegExp): void;
};

/** Notes every policy violation, console error, uncaught error, and request to another origin than the app's own. */
export function newWatch(home: string): Watch {
  const allowed: RegExp[] = [];
  const complaints: string[] = [];
  const complain = (text: string) => {
    if (!allowed.some((pattern) => pattern.test(text))) complaints.push(text);
  };
  return {
    complaints,
    allow: (pattern) => allowed.push(pattern),
    async over(context) {
      context.on('console', (message) => {
        if (message.type() === 'error') complain(`console: ${message.text()} ${message.location().url}`);
      });
      context.on('weberror', (error) =>
        complain(`uncaught: ${error.error().stack ?? error.error().message}`),
      );
      context.on('request', (request) => {
        const { origin, protocol } = new URL(request.url());
        const away = protocol.startsWith('http') && origin !== new URL(home).origin;
        if (away) complain(`other origin: ${request.url()}`);
      });
      await context.exposeFunction('complainOfPolicy', (text: string) => complain(`policy: ${text}`));
      await context.addInitScript(tellOfPolicy);
    },
  };
}

/** Runs in the page, before any of its own scripts. */
function tellOfPolicy() {
  document.addEventListener('securitypolicyviolation', (event) => {
    const { effectiveDirective, blockedURI, sourceFile, lineNumber, sample } = event;
    const text = `${effectiveDirective} ${blockedURI} ${sourceFile}:${lineNumber} ${sample}`;
    (window as unknown as { complainOfPolicy(text: string): void }).complainOfPolicy(text);
  });
}
