/** One browser engine on one new profile, driven by whatever drives it. */
export type Engine = {
  readonly version: string;
  goto(url: string): Promise<void>;
  /** Calls a function, given as text, in the page, and waits for what it answers. */
  call(source: string, argument: unknown): Promise<unknown>;
  close(): Promise<void>;
};

/** Null where this machine has no such engine. */
export type BeginEngine = () => Promise<Engine | null>;
