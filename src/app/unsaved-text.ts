import type { Draft } from '#record/entry.ts';
import type { Words } from '#words/en.ts';

type Said = { readonly text: string; readonly unit: string };

/** What could not be saved, whole and readable: every value as it was typed, or as it would have been kept. */
export function unsavedText(drafts: readonly Draft[], words: Words): string {
  return drafts.map((draft) => draftText(draft, words)).join('\n');
}

function draftText({ kind, atMs, zone, by, subject, body }: Draft, { record, dates }: Words): string {
  const all: Readonly<Record<string, unknown>> = body;
  const typed = (all.typed ?? {}) as Readonly<Record<string, Said>>;
  const facts = Object.entries(all)
    .filter(([key]) => key !== 'typed')
    .map(([key, value]) => {
      const said = typed[key];
      const text = said
        ? [said.text, said.unit].filter(Boolean).join(' ')
        : typeof value === 'object'
          ? JSON.stringify(value)
          : String(value);
      return `${record.field(key) || key} ${text}`;
    });
  const head = [record.kind(kind), dates.full(atMs, zone), by].filter(Boolean).join(', ');
  return `${head}: ${facts.join(', ')} (${subject})`;
}
