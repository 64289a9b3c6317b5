import { describe, expect, it } from 'vitest';
import { place } from '#record/place.ts';
import { readReceived } from '#screens/kit/read-received.ts';
import { formOf, newForm, type ReceivedForm, restoreReceived } from '#screens/kit/received-form.ts';
import { receivedGate } from '#screens/kit/received-gate.ts';
import { localText } from '#ui/when-input.ts';
import { en } from '#words/en.ts';
import { START_MS, writer } from '../../record/make.ts';

const here = place([]);
const comma = { ...here, decimal: ',' as const };
const read = (form: ReceivedForm, { correcting = false, at = here } = {}) =>
  readReceived(form, { place: at, nowMs: START_MS, correcting, words: en });

const cure: ReceivedForm = {
  ...newForm('cure', here),
  name: 'Cure for drying',
  lot: ' B-1107 ',
  supplier: 'Invented Spices',
  nitrite: '6.25',
  nitrate: '4',
};
const pork: ReceivedForm = {
  ...newForm('lean', here),
  name: 'Shoulder',
  temp: '3.5',
  mass: '12',
  massUnit: 'kg',
};

describe('what came in, from the fields as they were typed', () => {
  it('keeps a curing salt by the percentages on its bag, as typed too', () => {
    const result = read(cure);
    expect(result.ok && result.body).toEqual({
      what: 'cure',
      name: 'Cure for drying',
      lot: 'B-1107',
      supplier: 'Invented Spices',
      cure: { nitritePct: 6.25, nitratePct: 4, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' },
      typed: { nitritePct: { text: '6.25', unit: '%' }, nitratePct: { text: '4', unit: '%' } },
    });
    expect(result.ok && result.questions).toEqual([]);
  });

  it('never takes a curing salt by its name alone', () => {
    const result = read({ ...cure, nitrite: '', nitrate: '' });
    expect(result.ok ? {} : result.problems).toEqual({
      nitrite: 'Type a number here.',
      nitrate: 'Type a number here.',
    });
  });

  it('asks once about a share typed for a percentage, and says what was meant', () => {
    const result = read({ ...cure, nitrite: '0,0625' }, { at: comma });
    expect(result.ok && result.questions).toEqual([
      {
        field: 'nitritePct',
        text: '0,0625 % nitrite? That looks like a share of one. If the bag says 6,25 %, type 6,25.',
      },
    ]);
  });

  it('asks about a slipped decimal sign, and names the bags that were seen where a value is unusual', () => {
    const text = (nitrite: string, nitrate = '0') => {
      const result = read({ ...cure, nitrite, nitrate });
      return result.ok ? result.questions[0]?.text : null;
    };
    expect(text('62.5')).toContain('6.25 %, the decimal sign has slipped');
    expect(text('0.9')).toContain('0.4 to 0.6 %, 5.67 to 6.25 %');
    expect(text('99')).toContain('nearly pure');
    expect(text('0', '4')).toContain('Nitrate without nitrite');
  });

  it('keeps of a culture when its pack was opened and where it is kept; of meat it does not ask', () => {
    const pack = {
      ...newForm('culture', here),
      name: 'Culture',
      opened: '2024-01-02',
      storage: 'frozen',
    } as const;
    const result = read(pack);
    expect(result.ok && [localText(result.body.openedOnMs ?? 0).slice(0, 10), result.body.storage]).toEqual([
      '2024-01-02',
      'frozen',
    ]);
    const meat = read({ ...pork, opened: '2024-01-02', storage: 'frozen' });
    expect(meat.ok && 'openedOnMs' in meat.body).toBe(false);
    const ahead = read({ ...pack, opened: localText(START_MS + 3 * 86_400_000).slice(0, 10) });
    expect(ahead.ok ? null : ahead.problems.opened).toBeTruthy();
  });

  it('refuses shares that cannot be together', () => {
    const result = read({ ...cure, nitrite: '60', nitrate: '60' });
    expect(result.ok ? null : result.problems.nitrate).toBe(
      'Nitrite and nitrate together cannot be more than 100 %.',
    );
  });

  it('turns the maker’s units into base units', () => {
    const result = read(pork);
    expect(result.ok && [result.body.massG, result.body.tempC]).toEqual([12000, 3.5]);
    const american = { ...here, temperature: 'F' as const };
    const inPounds = read({ ...pork, temp: '38', mass: '10', massUnit: 'lb' }, { at: american });
    // 1 lb = 453.59237 g exactly; 38 °F = 3.333 °C by definition.
    expect(inPounds.ok && inPounds.body.massG).toBeCloseTo(4535.9237, 9);
    expect(inPounds.ok && inPounds.body.tempC).toBeCloseTo(10 / 3, 9);
  });

  it('asks about meat that came in warm', () => {
    const result = read({ ...pork, temp: '12' });
    expect(result.ok && result.questions[0]?.text).toBe(
      'Received at 12.0\u00a0°C? That is warm for fresh meat. Is it what the thermometer showed?',
    );
  });

  it('says beside each field what is wrong, and takes nothing', () => {
    const result = read({ ...pork, name: ' ', temp: '4,2,1', mass: '-3', what: 'lean' });
    expect(result.ok).toBe(false);
    expect(result.ok ? {} : Object.keys(result.problems)).toEqual(['name', 'temp', 'mass']);
  });

  it('asks nothing that does not belong to what came in', () => {
    const spice = { ...pork, what: 'spice' as const, temp: 'x', species: 'pork' };
    const result = read(spice);
    expect(result.ok && [result.body.tempC, result.body.species]).toEqual([undefined, undefined]);
  });

  it('takes a lot of today with no time, and none that lies ahead', () => {
    const now = read(cure);
    expect(now.ok && now.atMs).toBeNull();
    const ahead = read({ ...cure, when: localText(START_MS + 3_600_000) });
    expect(ahead.ok ? null : ahead.problems.when).toBe('This lies ahead. Choose when it was.');
  });

  it('keeps a calendar day as that day, and lets only the best-before day lie ahead', () => {
    const result = read({ ...pork, packed: '2024-01-06', bestBefore: '2024-02-01' });
    const day = (ms: number | undefined) => ms !== undefined && localText(ms).slice(0, 10);
    expect(result.ok && [day(result.body.packedOnMs), day(result.body.bestBeforeMs)]).toEqual([
      '2024-01-06',
      '2024-02-01',
    ]);
    const wrong = read({ ...pork, packed: '2024-02-01' });
    expect(wrong.ok ? null : wrong.problems.packed).toBe('This lies ahead. Choose when it was.');
  });

  it('asks for a reason where something is corrected', () => {
    const result = read(cure, { correcting: true });
    expect(result.ok ? null : Object.keys(result.problems)).toEqual(['reason']);
    expect(read({ ...cure, reason: 'misread the bag' }, { correcting: true }).ok).toBe(true);
  });

  it('fills the form for a correction with what was typed', () => {
    const log = writer();
    const first = read(pork);
    if (!first.ok) throw new Error('not read');
    const entry = log.write('received', 'lot:a', first.body, { atMs: START_MS });
    if (entry.kind !== 'received') throw new Error('not received');
    const form = formOf(entry, here);
    expect([form.mass, form.massUnit, form.temp, form.name]).toEqual(['12', 'kg', '3.5', 'Shoulder']);
    const again = read({ ...form, reason: 'x' }, { correcting: true });
    expect(again.ok ? null : again.problems).toBeNull();
  });

  it('restores a kept form, and nothing of another shape', () => {
    expect(restoreReceived(JSON.parse(JSON.stringify(cure)))).toEqual(cure);
    expect(restoreReceived({ ...cure, massUnit: 'stone' })).toBeNull();
    expect(restoreReceived({ name: 'x' })).toBeNull();
    expect(restoreReceived(null)).toBeNull();
  });
});

describe('meat as it comes in', () => {
  it('goes through its gate: up to 4 °C go, up to 7 °C mind it, above stop (common practice)', () => {
    const light = (text: string) => receivedGate(text, { place: here, words: en })?.verdict;
    expect(['4', '4.1', '7', '7.1', '', 'warm'].map(light)).toEqual([
      'within-limit',
      'pending',
      'pending',
      'deviation',
      undefined,
      undefined,
    ]);
    const inF = { ...here, temperature: 'F' as const };
    expect(receivedGate('46', { place: inF, words: en })?.word).toContain(
      '46.0\u00a0°F is above 44.6\u00a0°F',
    );
  });
});
