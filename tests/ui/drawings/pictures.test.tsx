import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { BarToLimit } from '#ui/drawings/BarToLimit.tsx';
import { PieceDrawing } from '#ui/drawings/PieceDrawing.tsx';
import { RailDrawing, type RailPiece } from '#ui/drawings/RailDrawing.tsx';
import { SliceDrawing } from '#ui/drawings/SliceDrawing.tsx';
import { Spark } from '#ui/drawings/Spark.tsx';

/** One element a line, class names without their hash, so that a change can be read. */
const lines = (html: string) =>
  html
    .replace(/class="[^"]*"/g, (names) => names.replace(/\b_([a-zA-Z]+)_[\w-]+/g, '$1'))
    .replace(/></g, '>\n<');

const piece = { diameterMm: 55, lengthMm: 320, lossFraction: 0.27, targetFraction: 0.38, seed: 6 };

describe('the pictures', () => {
  it('a piece on its way, apart from the others', async () => {
    const html = renderToStaticMarkup(<PieceDrawing {...piece} outlier label="Piece 6, 112 g to go" />);
    await expect(lines(html)).toMatchFileSnapshot('./pictures/piece.txt');
  });
  it('a slice, wet in the heart', async () => {
    const html = renderToStaticMarkup(
      <SliceDrawing seed={7} waterFromRim={[0, 0.6, 1]} label="Wet in the heart" />,
    );
    await expect(lines(html)).toMatchFileSnapshot('./pictures/slice.txt');
  });
  it('a bar to a limit', async () => {
    const html = renderToStaticMarkup(
      <BarToLimit
        label="degree-hours"
        usedShare={0.158}
        usedText="189 used"
        projectedShare={0.29}
        projectedText="~350 at pH 5.3"
        limitText="limit 1200"
      />,
    );
    await expect(lines(html)).toMatchFileSnapshot('./pictures/bar.txt');
  });
  it('a rail with a piece on its way, one at target, one apart and one that was not weighed', async () => {
    const hangs = (number: number, state: string, more: Partial<RailPiece> = {}): RailPiece => ({
      ...piece,
      id: `p${number}`,
      seed: number,
      number: String(number),
      toGo: `${60 - 20 * number} g`,
      label: `Piece ${number}, ${state}`,
      href: `#/pieces/${number}`,
      ...more,
    });
    const html = renderToStaticMarkup(
      <RailDrawing
        label="4 pieces on the rail"
        pieces={[
          hangs(1, '40 g to go'),
          hangs(2, 'at target weight', { lossFraction: 0.38, tag: 'at target' }),
          hangs(3, 'dries slower than its fellows', { lossFraction: 0.12, outlier: true, tag: 'slow' }),
          hangs(4, 'not weighed yet', { lossFraction: null }),
        ]}
      />,
    );
    await expect(lines(html)).toMatchFileSnapshot('./pictures/rail.txt');
  });
  it('a spark', async () => {
    const points = [0, 1, 2, 3].map((x) => ({ x, y: x * x }));
    await expect(lines(renderToStaticMarkup(<Spark points={points} label="rising" />))).toMatchFileSnapshot(
      './pictures/spark.txt',
    );
  });
});

describe('a rail', () => {
  const hung: RailPiece[] = Array.from({ length: 24 }, (_, at) => ({
    ...piece,
    id: `p${at}`,
    seed: at,
    number: String(at + 1),
    toGo: `${at} g`,
    label: `Piece ${at + 1}, ${at} g to go`,
    ...(at === 3 ? { tag: 'at target', lossFraction: 0.38 } : {}),
    ...(at === 5 ? { lossFraction: null } : {}),
    ...(at < 23 ? { href: `#/piece/${at}` } : {}),
  }));
  const html = renderToStaticMarkup(<RailDrawing label="Middle rail" pieces={hung} />);

  it('is a list that says each piece once, aloud', () => {
    expect(html.match(/<li/g)).toHaveLength(24);
    for (const { label } of hung) expect(html.split(`>${label}<`)).toHaveLength(2);
  });
  it('opens the pieces that can be opened', () => {
    expect(html.match(/<a /g)).toHaveLength(23);
    expect(html).toContain('href="#/piece/0"');
  });
  it('puts a word on the piece at target only', () => expect(html.match(/at target/g)).toHaveLength(1));
  it('gives every piece its own clip, so that none is drawn with another’s level', () => {
    const ids = html.match(/(?<= id=")[^"]+/g) ?? [];
    expect(ids).toHaveLength(48);
    expect(new Set(ids).size).toBe(48);
  });
  it('shows no red in a piece that was not weighed', () => {
    const sixth = html.split('<li')[6] ?? '';
    expect(/-red"><rect x="0" y="([\d.]+)" width="[\d.]+" height="([\d.]+)"/.exec(sixth)?.[2]).toBe('0');
  });
  it('with nothing on it is an empty list', () => {
    expect(renderToStaticMarkup(<RailDrawing label="Empty" pieces={[]} />)).not.toContain('<li');
  });
  it('draws the same from the same', () => {
    expect(renderToStaticMarkup(<RailDrawing label="Middle rail" pieces={hung} />)).toBe(html);
  });
});
