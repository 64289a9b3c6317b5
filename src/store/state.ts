import type { Draft } from '#record/entry.ts';
import type { StoreProblem } from './problem.ts';

/** How the store began, as a code. Nothing is appended before it is `ready`. */
export type StartState =
  | { readonly code: 'checking' }
  /** `first`: nothing says that there ever was a log on this device. `told`: what was found or mended at this start. */
  | { readonly code: 'ready'; readonly first: boolean; readonly told: readonly Told[] }
  /** There was a log of at least so many entries, and nothing of it is left here. Never a fresh start. */
  | { readonly code: 'lost'; readonly missing: number }
  | { readonly code: 'newer-open' }
  | { readonly code: 'blocked' }
  | { readonly code: 'cannot-open'; readonly problem: StoreProblem };

export type Told = { readonly code: ToldCode; readonly count: number };
export type ToldCode =
  | 'restored'
  | 'recopied'
  | 'missing'
  | 'damaged'
  | 'copy-damaged'
  | 'gap'
  | 'broken'
  | 'fork'
  | 'clock-behind'
  | 'began-anew'
  | 'taken-in';

export type StoreState = {
  readonly start: StartState;
  readonly connection: 'ok' | 'lost';
  /** `none-yet` until the first entry of this page was stored. */
  readonly copies: 'none-yet' | 'both' | 'one';
  /**
   * Whether some room is held back for readings. `low`: the browser says that little is left; `used`: the phone is full, and
   * what was held is being written on.
   */
  readonly room: 'not-known' | 'kept' | 'low' | 'used';
  /** What was last refused and is on the screen still: it can be passed on as text. */
  readonly unsaved: readonly Draft[];
};

let state: StoreState = {
  start: { code: 'checking' },
  connection: 'ok',
  copies: 'none-yet',
  room: 'not-known',
  unsaved: [],
};
const listeners = new Set<() => void>();

export function storeState(): StoreState {
  return state;
}

export function setState(changed: Partial<StoreState>): void {
  state = { ...state, ...changed };
  for (const listener of listeners) listener();
}

/** The maker has seen what the check told; it stands among the notices all the same. */
export function toldIsSeen(): void {
  const { start } = state;
  if (start.code === 'ready') setState({ start: { ...start, told: [] } });
}

export function onState(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
