import { describe, expect, it } from 'vitest';
import { type Answers, mouldAdvice } from '#screens/mould/mould-view.ts';
import { en as words } from '#words/en.ts';
import { plainText } from '#words/said.ts';

const COLOURS = Object.keys(words.mould.colours) as NonNullable<Answers['colour']>[];
const TEXTURES = Object.keys(words.mould.textures) as NonNullable<Answers['texture']>[];
const SPREADS = Object.keys(words.mould.spreads) as NonNullable<Answers['spread']>[];

describe('what is said of a mould', () => {
  it('waits for all three answers', () => {
    expect(mouldAdvice({ colour: 'white', texture: null, spread: 'spots' }, 9)).toBe('wait');
    expect(mouldAdvice({ colour: null, texture: 'powder', spread: 'spots' }, 9)).toBe('wait');
    expect(mouldAdvice({ colour: 'none', texture: null, spread: null }, 9)).toBe('bare');
  });

  it('leaves alone only what is white, dry and looks like flour', () => {
    const left = COLOURS.flatMap((colour) =>
      TEXTURES.flatMap((texture) =>
        SPREADS.filter((spread) => mouldAdvice({ colour, texture, spread }, 9) === 'bloom').map(
          (spread) => `${colour} ${texture} ${spread}`,
        ),
      ),
    );
    expect(left).toEqual(['white powder spots', 'white powder part', 'white powder all']);
  });

  it('calls nothing a bloom in the first days', () => {
    const white = { colour: 'white', texture: 'powder', spread: 'all' } as const;
    expect([0, 4, 5].map((days) => mouldAdvice(white, days))).toEqual(['early', 'early', 'bloom']);
    expect(mouldAdvice(white, null)).toBe('bloom');
    expect(mouldAdvice({ ...white, texture: 'slime' }, 1)).toBe('slime');
  });

  it('tells not to eat black, yellow and red whatever the rest, and green that has spread', () => {
    for (const colour of ['black', 'yellow', 'red'] as const)
      for (const texture of TEXTURES)
        for (const spread of SPREADS) expect(mouldAdvice({ colour, texture, spread }, 9)).toBe('discard');
    expect(mouldAdvice({ colour: 'green', texture: 'powder', spread: 'part' }, 9)).toBe('discard');
    expect(mouldAdvice({ colour: 'green', texture: 'powder', spread: 'spots' }, 9)).toBe('coloured');
    expect(plainText(words.mould.advice.discard)).toContain('Do not eat it');
  });

  it('calls none harmless', () => {
    const said = Object.values(words.mould.advice).map(plainText).join(' ');
    expect(said).not.toMatch(/harmless|edible|good mould/i);
  });
});
