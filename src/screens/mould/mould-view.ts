import type { Batch } from '#record/batch.ts';
import type { Entry } from '#record/entry.ts';
import { ofKind } from '#record/fold.ts';
import type { BodyOf } from '#record/kinds.ts';
import { live } from '#record/strikes.ts';
import type { Words } from '#words/en.ts';

type Looked = BodyOf<'mould-looked'>;
export type Answers = {
  readonly colour: Looked['colour'] | null;
  readonly texture: Looked['texture'] | null;
  readonly spread: Looked['spread'] | null;
};

/** A bloom that was sown shows from about the fifth day on: from memory, and so it only sends to look again. */
const FIRST_BLOOM_DAYS = 5;

/** What is usually done, the careful way: of two answers the worse one decides. Common practice. */
export function mouldAdvice(
  { colour, texture, spread }: Answers,
  sinceStuffingDays: number | null,
): keyof Words['mould']['advice'] {
  if (colour === 'none') return 'bare';
  if (colour === null || texture === null || spread === null) return 'wait';
  if (colour === 'black' || colour === 'yellow' || colour === 'red') return 'discard';
  const coloured = colour === 'green' || colour === 'blue';
  if (coloured && spread !== 'spots') return 'discard';
  if (texture === 'slime') return 'slime';
  if (coloured) return 'coloured';
  if (texture === 'fur' || colour === 'grey') return 'fur';
  return sinceStuffingDays !== null && sinceStuffingDays < FIRST_BLOOM_DAYS ? 'early' : 'bloom';
}

/** Null while an answer is missing; a bare piece has neither texture nor spread, and what is written says none of either. */
export function lookedBody(
  { colour, texture, spread }: Answers,
  action: Looked['action'] | null,
): Looked | null {
  if (colour === null || action === null) return null;
  if (colour === 'none') return { colour, texture: 'powder', spread: 'spots', action };
  return texture === null || spread === null ? null : { colour, texture, spread, action };
}

/** By the calendar where it hangs; null before it was stuffed. */
export function daysSinceStuffing(
  { stuffedAtMs }: Pick<Batch, 'stuffedAtMs'>,
  { nowMs, zone, words }: { nowMs: number; zone: string; words: Words },
): number | null {
  return stuffedAtMs === null ? null : Math.max(0, words.dates.dayCount(stuffedAtMs, nowMs, zone));
}

export type LookRow = { readonly key: string; readonly title: string; readonly note: string };

/** What was looked at so far, the newest first. */
export function looks(
  batch: Batch,
  entries: readonly Entry[],
  { nowMs, zone, words }: { nowMs: number; zone: string; words: Words },
): LookRow[] {
  const { mould } = words;
  return ofKind(live(entries), 'mould-looked')
    .toReversed()
    .flatMap(({ id, subject, atMs, body }) => {
      const piece = batch.pieces.find((each) => each.id === subject);
      if (!piece) return [];
      const { colour, spread, action } = body;
      const said = { number: piece.number, colour: mould.colours[colour], action: mould.actions[action] };
      return [
        {
          key: id,
          title:
            colour === 'none' ? mould.lookBare(said) : mould.look({ ...said, spread: mould.spreads[spread] }),
          note: words.dates.near(atMs, nowMs, zone),
        },
      ];
    });
}
