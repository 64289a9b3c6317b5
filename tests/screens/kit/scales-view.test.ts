import { describe, expect, it } from 'vitest';
import { place } from '#record/place.ts';
import { NEW_SCALE, readScale, stepOptions } from '#screens/kit/scale-form.ts';
import { scalesView } from '#screens/kit/scales-view.ts';
import { en } from '#words/en.ts';
import { plainText } from '#words/said.ts';
import { writer } from '../../record/make.ts';

const here = place([]);
const read = (form: Partial<typeof NEW_SCALE>, at = here) => readScale({ ...NEW_SCALE, ...form }, at, en);

describe('a scale, from the fields', () => {
  it('needs nothing but its step', () => {
    expect(read({ step: '0.01 g' })).toEqual({
      ok: true,
      body: { name: '0.01\u00a0g scale', stepG: 0.01, typed: { stepG: { text: '0.01', unit: 'g' } } },
    });
  });

  it('takes ounces, with the most in the unit of the step', () => {
    const result = read({ step: '0.1 oz', most: '160', name: 'Hanging' }, { ...here, mass: 'pounds' });
    // 1 oz = 28.349523125 g exactly.
    expect(result.ok && result.body.stepG).toBeCloseTo(2.8349523125, 12);
    expect(result.ok && result.body.mostG).toBeCloseTo(4535.9237, 9);
  });

  it('offers ounces to who weighs in pounds only', () => {
    const labels = (mass: 'metric' | 'pounds') =>
      stepOptions({ ...here, mass }, en).map(({ label }) => label);
    expect(labels('metric')).not.toContain('0.1\u00a0oz');
    expect(labels('pounds')).toContain('0.1\u00a0oz');
  });

  it('says what is wrong beside the field', () => {
    const problems = (form: Partial<typeof NEW_SCALE>) => {
      const result = read(form);
      return result.ok ? null : result.problems;
    };
    expect(problems({})).toEqual({ step: 'Choose the step that its display shows.' });
    expect(problems({ step: 'other', otherStep: '0' })).toEqual({
      otherStep: 'This is too little: at least 0.0001\u00a0g.',
    });
    expect(problems({ step: '5 g', most: '2' })).toEqual({
      most: 'The step cannot be larger than the most that it carries.',
    });
  });
});

describe('the scales and meters', () => {
  const log = writer();
  log.write('scale-added', 'instrument:k', { name: 'Kitchen', stepG: 1, mostG: 5000 });
  const pocket = log.write('scale-added', 'instrument:p', { name: 'Pocket', stepG: 0.01, mostG: 100 });
  log.write('scale-added', 'instrument:h', {
    name: 'Hanging',
    stepG: 2.8349523125,
    typed: { stepG: { text: '0.1', unit: 'oz' } },
  });
  log.write('meter-added', 'instrument:m', { what: 'ph-meter', name: 'Blue one' });

  it('stand finest first, each in the unit it was typed in', () => {
    const view = scalesView(log.entries, here, en);
    expect(view.scales.map(({ name, note }) => [name, note])).toEqual([
      ['Pocket', 'reads in 0.01\u00a0g, up to 100\u00a0g'],
      ['Kitchen', 'reads in 1\u00a0g, up to 5000\u00a0g'],
      ['Hanging', 'reads in 0.1\u00a0oz'],
    ]);
    expect(view.meters.map(({ name, note }) => [name, note])).toEqual([['Blue one', 'pH meter']]);
  });

  // Half a step at the reading and half at the tare within 5 %: 0.01 g / 0.05 = 0.2 g (derived).
  it('say from how little the finest weighs curing salt well, with the working', () => {
    const { dose } = scalesView(log.entries, here, en);
    expect([dose?.value, dose?.unit]).toEqual(['0.2', 'g']);
    expect(dose?.working.result?.value).toBe('0.2\u00a0g');
    expect(dose?.working.sources).toHaveLength(2);
  });

  it('leave out what was struck', () => {
    const more = writer(10);
    more.write('struck', 'instrument:p', {}, { strikes: pocket.id });
    const view = scalesView([...log.entries, ...more.entries], here, en);
    expect(view.scales.map(({ name }) => name)).toEqual(['Kitchen', 'Hanging']);
    expect(view.dose?.value).toBe('20');
  });

  it('ask for the scale first where there is none', () => {
    const view = scalesView([], here, en);
    expect(plainText(view.sentence)).toContain('Add the scale');
    expect(view.dose).toBeNull();
  });
});
