import { type StaticServer, serveStatic } from '../../run/static-server.ts';

/** The built app on a port of its own, which it keeps when stopped and started again: an origin that can lose its server. */
export type AppServer = {
  readonly url: string;
  start(): Promise<void>;
  stop(): Promise<void>;
  /** From now on the files of another folder: a deployment. */
  deploy(folder: string): void;
};

export async function appServer(at: string): Promise<AppServer> {
  let folder = 'dist';
  const open = (port: number) => serveStatic({ root: () => folder, port, at });
  const { url, port, stop } = await open(0);
  let running: Pick<StaticServer, 'stop'> | null = { stop };
  return {
    url,
    async start() {
      running ??= await open(port);
    },
    async stop() {
      await running?.stop();
      running = null;
    },
    deploy(next) {
      folder = next;
    },
  };
}
