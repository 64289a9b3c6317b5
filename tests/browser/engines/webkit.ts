/** WebKit as the GTK port ships it: its own driver over HTTP, its small browser on a screen that is not there. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod/mini';
import type { Engine } from './engine.ts';
import { foundOrInstalled } from './installed.ts';

const answer = z.object({ value: z.unknown() });
const session = z.object({
  sessionId: z.string(),
  capabilities: z.object({ browserName: z.string(), browserVersion: z.string() }),
});
const PORT = 4565;
const DISPLAY = ':79';

export async function beginWebkit(): Promise<Engine | null> {
  const packages = ['webkit2gtk-driver', 'xvfb'];
  const driver = foundOrInstalled(['WebKitWebDriver'], packages);
  const screen = foundOrInstalled(['Xvfb'], packages);
  const binary = smallBrowser();
  if (driver === null || screen === null || binary === undefined) return null;
  const env = {
    ...process.env,
    DISPLAY,
    WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
    WEBKIT_DISABLE_COMPOSITING_MODE: '1',
    LIBGL_ALWAYS_SOFTWARE: '1',
  };
  const started: ChildProcess[] = [
    spawn(screen, [DISPLAY, '-screen', '0', '800x1000x24'], { stdio: 'ignore' }),
    spawn(driver, [`--port=${PORT}`], { env, stdio: 'ignore' }),
  ];
  const stop = () => {
    for (const child of started.reverse()) child.kill();
  };
  try {
    const { sessionId, capabilities } = session.parse(
      await whenListening(() =>
        ask('POST', '/session', {
          capabilities: {
            alwaysMatch: { 'webkitgtk:browserOptions': { binary, args: ['--automation'] } },
          },
        }),
      ),
    );
    const at = `/session/${sessionId}`;
    await ask('POST', `${at}/timeouts`, { script: 60_000, pageLoad: 60_000 });
    return {
      version: `${capabilities.browserName} ${capabilities.browserVersion}`,
      goto: async (url) => void (await ask('POST', `${at}/url`, { url })),
      call: (source, argument) =>
        ask('POST', `${at}/execute/async`, {
          script: `const done = arguments[1]; (${source})(arguments[0]).then(done, (error) => done(String(error)));`,
          args: [argument],
        }),
      close: async () => {
        await ask('DELETE', at);
        stop();
      },
    };
  } catch (error) {
    stop();
    throw error;
  }
}

/** It lies in the folder of the library, whose name holds the architecture and the version. */
function smallBrowser(): string | undefined {
  const inside = (folder: string) => readdirSync(folder).map((name) => join(folder, name));
  return inside('/usr/lib')
    .filter((folder) => folder.endsWith('-linux-gnu'))
    .flatMap(inside)
    .filter((folder) => folder.includes('webkit2gtk-'))
    .map((folder) => join(folder, 'MiniBrowser'))
    .find(existsSync);
}

async function ask(method: string, path: string, body?: unknown): Promise<unknown> {
  const response = await fetch(`http://127.0.0.1:${PORT}${path}`, {
    method,
    headers: { 'Content-Type': 'application/json' },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  const { value } = answer.parse(await response.json());
  if (!response.ok) throw new Error(`${method} ${path}: ${JSON.stringify(value)}`);
  return value;
}

/** The driver takes a moment to listen. */
async function whenListening<T>(work: () => Promise<T>): Promise<T> {
  for (let tried = 0; ; tried++) {
    try {
      return await work();
    } catch (error) {
      if (!(error instanceof TypeError) || tried > 60) throw error;
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
  }
}
