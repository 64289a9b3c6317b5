import type { Words } from '#words/en.ts';

/** The languages there are; each is a chunk of its own. */
const languages: Readonly<Record<string, () => Promise<Words>>> = {
  en: async () => (await import('#words/en.ts')).en,
};

/** The first of the phone's languages that the app has; English where it has none. */
export async function loadWords(): Promise<Words> {
  const code = navigator.languages.map((tag) => tag.slice(0, 2)).find((tag) => Object.hasOwn(languages, tag));
  const load = languages[code ?? 'en'] ?? languages.en;
  if (!load) throw new Error('loadWords: no language is built in');
  const words = await load();
  document.documentElement.lang = code ?? 'en';
  return words;
}
