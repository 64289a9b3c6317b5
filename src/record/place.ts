import type { Entry, EntryOf } from './entry.ts';
import { latest, ofKind } from './fold.ts';
import { live } from './strikes.ts';
import type { SubjectId } from './subject.ts';

/** The workshop as it stands: how numbers are written, which rule set is in force, the kit and what was received. */
export type Place = {
  readonly chosen: boolean;
  readonly mass: 'metric' | 'pounds';
  readonly temperature: 'C' | 'F';
  readonly decimal: '.' | ',';
  readonly paper: 'A4' | 'Letter';
  readonly initials: string;
  /** Null until the maker has chosen: no rule set is assumed. */
  readonly ruleSet: 'US' | 'CA' | 'EU' | null;
};

export type Lot = { readonly id: SubjectId; readonly received: EntryOf<'received'> };
export type Scale = {
  readonly id: SubjectId;
  readonly name: string;
  readonly stepG: number;
  readonly mostG: number | null;
};
export type Meter = {
  readonly id: SubjectId;
  readonly name: string;
  readonly what: 'ph-meter' | 'thermometer' | 'hygrometer';
};
export type Chamber = {
  readonly id: SubjectId;
  readonly name: string;
  readonly rails: number;
  /** How many pieces hang from one rail; null while nobody said. */
  readonly places: number | null;
};

export function place(entries: readonly Entry[]): Place {
  const standing = live(entries);
  const bench = latest(standing, 'bench-set-up');
  return {
    chosen: bench !== null,
    mass: bench?.body.mass ?? 'metric',
    temperature: bench?.body.temperature ?? 'C',
    decimal: bench?.body.decimal ?? '.',
    paper: bench?.body.paper ?? 'A4',
    initials: bench?.body.initials ?? '',
    ruleSet: latest(standing, 'rule-set-chosen')?.body.ruleSet ?? null,
  };
}

/** One a subject: a correction replaces what it strikes, so the last standing entry of a subject is what holds. */
function bySubject<T extends Entry>(entries: readonly T[]): T[] {
  return [...new Map(entries.map((entry) => [entry.subject, entry])).values()];
}

export function lots(entries: readonly Entry[]): Lot[] {
  return bySubject(ofKind(live(entries), 'received')).map((received) => ({ id: received.subject, received }));
}

export function scales(entries: readonly Entry[]): Scale[] {
  return bySubject(ofKind(live(entries), 'scale-added')).map(({ subject, body }) => ({
    id: subject,
    name: body.name,
    stepG: body.stepG,
    mostG: body.mostG ?? null,
  }));
}

export function meters(entries: readonly Entry[]): Meter[] {
  return bySubject(ofKind(live(entries), 'meter-added')).map(({ subject, body }) => ({
    id: subject,
    name: body.name,
    what: body.what,
  }));
}

export function chambers(entries: readonly Entry[]): Chamber[] {
  return bySubject(ofKind(live(entries), 'chamber-added')).map(({ subject, body }) => ({
    id: subject,
    name: body.name,
    rails: body.rails,
    places: body.places ?? null,
  }));
}
