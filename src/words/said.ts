/** A sentence as tokens, never as markup: what the maker acts on is strong, and nothing else is. */
export type Token = { readonly text: string; readonly strong?: true };
export type Said = readonly Token[];

export function strong(text: string): Token {
  return { text, strong: true };
}

export function said(...parts: readonly (string | Token)[]): Said {
  return parts.map((part) => (typeof part === 'string' ? { text: part } : part));
}

/** The bare text, for a label, a print or a test. */
export function plainText(tokens: Said): string {
  return tokens.map(({ text }) => text).join('');
}
