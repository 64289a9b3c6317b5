/** Text from elsewhere that may be shown as it is: no control characters, no overridden direction, no half of a character. */

const MARK_AND_SEPARATORS = new Set([0x2028, 0x2029, 0xfeff]);

function isOdd(code: number): boolean {
  if (code < 0x20) return code !== 0x09 && code !== 0x0a && code !== 0x0d;
  if (code >= 0x7f && code <= 0x9f) return true;
  if (code >= 0xd800 && code <= 0xdfff) return true;
  return (code >= 0x202a && code <= 0x202e) || MARK_AND_SEPARATORS.has(code);
}

export function isPlainText(text: string): boolean {
  for (const character of text) if (isOdd(character.codePointAt(0) ?? 0)) return false;
  return true;
}

/** Whether every text in parsed JSON is plain. The depth must have been checked before. */
export function hasPlainTexts(value: unknown): boolean {
  if (typeof value === 'string') return isPlainText(value);
  if (typeof value !== 'object' || value === null) return true;
  return Object.values(value).every(hasPlainTexts);
}

/** One short line for a label, whatever the text was. */
export function shortLine(text: string, mostCharacters: number): string {
  const characters = [...text].map((each) => (isPlainText(each) && !/\s/.test(each) ? each : ' '));
  return characters.join('').replace(/ +/g, ' ').trim().slice(0, mostCharacters);
}
