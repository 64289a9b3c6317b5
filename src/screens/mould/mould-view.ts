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

/** What is usually done, the careful way: of two answers the worse one decides. Common practice. */
export function mouldAdvice({ colour, texture, spread }: Answers): keyof Words['mould']['advice'] {
  if (colour === 'none') return 'bare';
  if (colour === null || texture === null || spread === null) return 'wait';
  if (colour === 'black' || colour === 'yellow' || colour === 'red') return 'discard';
  const coloured = colour === 'green' || colour === 'blue';
  if (coloured && spread !== 'spots') return 'discard';
  if (texture === 'slime') return 'slime';
  if (coloured) return 'coloured';
  return texture === 'fur' || colour === 'grey' ? 'fur' : 'bloom';
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
      return [
        {
          key: id,
          title: mould.look({
            number: piece.number,
            colour: mould.colours[body.colour],
            spread: mould.spreads[body.spread],
            action: mould.actions[body.action],
          }),
          note: words.dates.near(atMs, nowMs, zone),
        },
      ];
    });
}
