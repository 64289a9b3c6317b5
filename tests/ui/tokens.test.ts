import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync('src/ui/tokens.css', 'utf8');

function colour(name: string, theme: 'light' | 'dark'): string {
  const value = new RegExp(`--${name}: ([^;]+);`).exec(css)?.[1] ?? '';
  const hexes = value.match(/#[0-9a-f]{6}/g) ?? [];
  const hex = theme === 'light' ? hexes[0] : hexes.at(-1);
  if (hex === undefined) throw new Error(`no colour --${name}`);
  return hex;
}

/** Relative luminance and contrast: W3C, Web Content Accessibility Guidelines 2.2, definitions (from memory, high confidence). */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

describe('the colours', () => {
  it('are measured by the W3C formula: black on white is 21 to 1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2); // the known near miss of AA
  });

  // ink          ground    at least: 7 figures, 4.5 text, 3 edges of what is pressed and parts of a picture
  const pairs: readonly [string, string, number][] = [
    ['ink', 'paper', 7],
    ['ink', 'bloom', 7],
    ['ink', 'shade', 7],
    ['soft', 'paper', 7],
    ['soft', 'bloom', 7],
    ['soft', 'shade', 4.5],
    ['cured-ink', 'paper', 4.5],
    ['cured-ink', 'bloom', 4.5],
    ['act-ink', 'act', 4.5],
    ['act-ink', 'act-down', 4.5],
    ['steel', 'paper', 4.5],
    ['act', 'paper', 3],
    ['edge', 'paper', 3],
    ['edge', 'bloom', 3],
    ['cured', 'paper', 3],
    ['string', 'paper', 3],
  ];
  describe.each(['light', 'dark'] as const)('%s', (theme) => {
    it.each(pairs)('%s on %s keeps %d to 1', (ink, ground, least) => {
      expect(contrast(colour(ink, theme), colour(ground, theme))).toBeGreaterThanOrEqual(least);
    });
  });
});
