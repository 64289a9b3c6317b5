import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { LossChart } from '#ui/charts/LossChart.tsx';
import { Figure } from '#ui/Figure.tsx';
import { NavBar } from '#ui/NavBar.tsx';
import { NumberField } from '#ui/NumberField.tsx';
import { NumberPad } from '#ui/NumberPad.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import { Timer } from '#ui/Timer.tsx';
import { type VerdictShape, VerdictSign } from '#ui/VerdictMark.tsx';

const nothing = () => {};
const attribute = (html: string, name: string) => new RegExp(`\\s${name}="([^"]*)"`).exec(html)?.[1];

describe('a sentence', () => {
  it('makes only strong tokens strong', () => {
    const html = renderToStaticMarkup(
      <Sentence tokens={[{ text: 'weigh ' }, { text: 'now', strong: true }]} />,
    );
    expect(html).toContain('<strong>now</strong>');
    expect(html.match(/<strong>/g)).toHaveLength(1);
  });
  it('never takes what a maker typed for markup', () => {
    const html = renderToStaticMarkup(<Sentence tokens={[{ text: '<img src=x onerror=alert(1)>' }]} />);
    expect(html).not.toContain('<img');
    expect(html).toContain('&lt;img');
  });
});

describe('a number field', () => {
  const field = (problem?: string) =>
    renderToStaticMarkup(
      <NumberField
        label="pH"
        text="5,x"
        onText={nothing}
        unit="pH"
        previous="last 5.46"
        {...(problem === undefined ? {} : { problem })}
      />,
    );
  it('keeps what was typed, letter for letter', () => expect(field('No number.')).toContain('value="5,x"'));
  it('asks the phone for its decimal keys', () => expect(attribute(field(), 'inputMode')).toBe('decimal'));
  it('ties unit, last value and problem to the input, each to something that is there', () => {
    const html = field('No number.');
    const ids = attribute(html, 'aria-describedby')?.split(' ') ?? [];
    expect(ids).toHaveLength(3);
    for (const id of ids) expect(html).toContain(` id="${id}"`);
    expect(attribute(html, 'aria-invalid')).toBe('true');
  });
  it('says nothing of a problem where there is none', () => {
    expect(attribute(field(), 'aria-invalid')).toBeUndefined();
    expect(attribute(field(), 'aria-describedby')).not.toContain('problem');
  });
});

it('a choice starts with nothing chosen where nothing was', () => {
  const options = [
    { value: 'g', label: 'grams' },
    { value: 'oz', label: 'ounces' },
  ] as const;
  const draw = (value: 'g' | 'oz' | null) =>
    renderToStaticMarkup(<Choice label="Masses" options={options} value={value} onValue={nothing} />);
  expect(draw(null)).not.toContain('checked');
  expect(draw('oz')).toMatch(/checked="" value="oz"|value="oz"[^>]*checked=""/);
});

it('the pad shows the maker’s own decimal sign, and names what is not a digit', () => {
  const pad = renderToStaticMarkup(
    <NumberPad text="" onText={nothing} decimal="," label="Weight" decimalLabel="comma" backLabel="back" />,
  );
  expect(pad).toContain('aria-label="comma">,</button>');
  expect(pad).toContain('aria-label="back"');
  expect(pad.match(/<button/g)).toHaveLength(12);
});

it('no two verdicts share a shape', () => {
  const all: VerdictShape[] = ['within-limit', 'pending', 'deviation', 'no-reading', 'does-not-apply'];
  const shapes = all.map((verdict) => renderToStaticMarkup(<VerdictSign verdict={verdict} />));
  expect(new Set(shapes).size).toBe(all.length);
});

it('an estimate never looks like a measurement', () => {
  const html = renderToStaticMarkup(
    <Figure label="in the slice" value="4.4" unit="%" about interval="4.2 to 4.7" />,
  );
  expect(html).toContain('>~4.4<');
  expect(html).toContain('4.2 to 4.7');
  expect(renderToStaticMarkup(<Figure label="pH" value="5.46" />)).toContain('>5.46<');
});

it('a button with an address is a link, one without is a button', () => {
  expect(renderToStaticMarkup(<Button href="#/batches">Batches</Button>)).toMatch(
    /^<a [^>]*href="#\/batches"/,
  );
  expect(renderToStaticMarkup(<Button onPress={nothing}>Skip</Button>)).toMatch(
    /^<button [^>]*type="button"/,
  );
});

it('the bar of rooms marks the room one is in, and says what waits', () => {
  const html = renderToStaticMarkup(
    <NavBar
      label="Rooms"
      rooms={[
        { href: '#/', label: 'Today', current: false, waiting: { count: 3, label: '3 due' } },
        { href: '#/kit', label: 'Kit', current: true, waiting: { count: 0, label: '0 due' } },
      ]}
    />,
  );
  expect(html.match(/aria-current="page"/g)).toHaveLength(1);
  expect(html).toContain('3 due');
  expect(html).not.toContain('0 due');
});

it('a timer that has run out says so before the time', () => {
  const html = renderToStaticMarkup(
    <Timer label="Soak" startMs={0} endMs={60_000} nowMs={200_000} note="since 14:02" overWord="over by" />,
  );
  expect(html).toContain('over by 2:20');
  expect(html).toContain('width="100.0%"');
});

it('a chart has its numbers as a table, even before it is drawn', () => {
  const html = renderToStaticMarkup(
    <LossChart
      title="Loss"
      label="Loss reached 10 %"
      waitingLabel="Drawing"
      failedLabel="Could not be drawn"
      tableLabel="The numbers"
      table={{ columns: ['day', 'loss, %'], rows: [['7', '10']] }}
      model={{ xTitle: 'day', yTitle: '%', xTicks: [], yTicks: [], series: [] }}
    />,
  );
  expect(html).toContain('aria-label="Loss reached 10 %"');
  expect(html).toContain('Drawing');
  expect(html).toContain('<td>10</td>');
});
