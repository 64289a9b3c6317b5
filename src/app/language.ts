import type { FirstWords } from '#words/en/first.ts';
import type { Words } from '#words/en.ts';

export type Language = {
  /** What the frame and the first page say. */
  readonly first: FirstWords;
  /** Everything, fetched when a room is entered that says more; the same promise each time. */
  readonly all: () => Promise<Words>;
};

/** The languages there are; each is two chunks of its own. */
const languages: Readonly<Record<string, () => Promise<Language>>> = {
  en: async () => ({
    first: (await import('#words/en/first.ts')).first,
    all: once(async () => (await import('#words/en.ts')).en),
  }),
};

function once(load: () => Promise<Words>): () => Promise<Words> {
  let loading: Promise<Words> | null = null;
  return () => {
    loading ??= load();
    return loading;
  };
}

/** The first of the phone's languages that the app has; English where it has none. */
export async function loadLanguage(): Promise<Language> {
  const code = navigator.languages.map((tag) => tag.slice(0, 2)).find((tag) => Object.hasOwn(languages, tag));
  const load = languages[code ?? 'en'] ?? languages.en;
  if (!load) throw new Error('loadLanguage: no language is built in');
  const language = await load();
  document.documentElement.lang = code ?? 'en';
  return language;
}
