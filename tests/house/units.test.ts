import { expect, test } from 'vitest';
import { code, sources } from './sources.ts';

const words = (text: string) => text.split(' ');
const UNITS = words(
  'G Kg Mg Pounds L C F K Deg Mm M M2 M3 Ms S Seconds Minutes Hours Day Days Mv Pa KPa Ph Aw Seq',
);
const UNIT = `(${[...UNITS, ...words('Pct Fraction Ratio Share Pace Power Hazard')].join('|')})`;
/** `atMs`, `fluxKgPerM2S`, `ionMgPerKgMeat`, `pctOfLean`, `lastReadHoursAgo`; a bare `days` says it too. */
const SAYS_UNIT = new RegExp(`${UNIT}(Per(${UNIT}|Piece)+)?(Meat|Mix)?(Of(Meat|Mix|Lean|Total))?(Ago)?$`);
/** The trade's own, then counts of what is named, then pure numbers of the mathematics as its books call them. */
const NEED_NONE = [
  ...words('ph aw seq v value values marks'),
  ...words(
    'batches blind count differing dimensions entries here kept left line lines missing number pieces places portions rails rings unknown',
  ),
  ...words(
    'biot chance fourier grown high least level lnTau lnTheta low mpr most near shape tilt tolerance x z',
  ),
];

test('the name of a number in core and record ends in its unit', () => {
  const numbers = [...sources('src/core'), ...sources('src/record')].flatMap(({ path, text }) =>
    [...code(text).matchAll(/\b([a-z]\w*)\??: (?:readonly )?number\b(?! *=>)/g)].map(
      ([, name = '']) => [path, name] as const,
    ),
  );
  expect(numbers.length).toBeGreaterThan(20);
  const says = (name: string) => SAYS_UNIT.test(`${name.charAt(0).toUpperCase()}${name.slice(1)}`);
  const silent = numbers.filter(([, name]) => !says(name) && !NEED_NONE.includes(name));
  expect([...new Set(silent.map((pair) => pair.join(': ')))]).toEqual([]);
});
