/** What a stranger might send as a formula: whole files, and formulas as the text inside a file or a link. All invented. */
import { SHORT_FORMULA } from './long-formula.ts';

type Json = Record<string, unknown>;
export type Case = readonly [name: string, text: string];

const LINE = SHORT_FORMULA.lines[0];

/** The file around the text of a formula. */
export const inFile = (formulaText: string): string =>
  `{"format":"greenweight-formula","version":1,"formula":${formulaText},"note":""}`;
const formula = (more: Json): string => JSON.stringify({ ...SHORT_FORMULA, ...more });
const line = (more: Json): string => formula({ lines: [{ ...LINE, ...more }] });
const amount = (more: Json): string => line({ amount: more });
const WHOLE = inFile(formula({}));
const envelope = (more: Json): string => JSON.stringify({ ...JSON.parse(WHOLE), ...more });
/** Text put in where JSON.stringify would not write it. */
function instead(whole: string, from: string, to: string): string {
  if (!whole.includes(from)) throw new Error(`instead: no ${from}`);
  return whole.replace(from, to);
}
const raw = (from: string, to: string): string => instead(formula({}), from, to);
const around = (from: string, to: string): string => instead(WHOLE, from, to);

/** Files of which none may come in. */
export const REFUSED_FILES: readonly Case[] = [
  // not JSON, or not ours
  ['nothing', ''],
  ['a space', ' '],
  ['a word', 'formula'],
  ['markup', '<html><script>alert(1)</script></html>'],
  ['a half file', WHOLE.slice(0, 100)],
  ['a file with a tail', `${WHOLE}x`],
  ['two files in one', WHOLE + WHOLE],
  ['single quotes', WHOLE.replaceAll('"', "'")],
  ['a comment', `/* */${WHOLE}`],
  ['a comma too many', around('"note":""', '"note":"",')],
  ['null', 'null'],
  ['true', 'true'],
  ['a number', '1'],
  ['a text', '"greenweight-formula"'],
  ['an empty list', '[]'],
  ['a list of a file', `[${WHOLE}]`],
  ['an empty object', '{}'],
  ['the bare formula', formula({})],
  ['another format', envelope({ format: 'greenweight-log' })],
  ['the format in capitals', envelope({ format: 'GREENWEIGHT-FORMULA' })],
  ['a format that is a list', envelope({ format: ['greenweight-formula'] })],
  ['a newer version', envelope({ version: 2 })],
  ['a version far ahead', envelope({ version: 1e300 })],
  ['version nought', envelope({ version: 0 })],
  ['a version that is a text', envelope({ version: '1' })],
  ['a version and a bit', envelope({ version: 1.5 })],
  ['no version', envelope({ version: undefined })],
  ['no note', envelope({ note: undefined })],
  ['a note that is an object', envelope({ note: { toString: 'x' } })],
  ['a note too long', envelope({ note: 'n'.repeat(401) })],
  ['a field that nobody knows', envelope({ admin: true })],
  ['a thousand lists in lists', envelope({ note: JSON.parse('['.repeat(1000) + ']'.repeat(1000)) })],
  ['objects nine deep', envelope({ from: JSON.parse(`${'{"a":'.repeat(9)}1${'}'.repeat(9)}`) })],
  ['half a megabyte of spaces', WHOLE + ' '.repeat(512 * 1024)],
  ['a prototype', around('"note":""', '"note":"","__proto__":{"isAdmin":true}')],
  ['a prototype in escapes', around('"note":""', '"note":"","\\u005f_proto__":{}')],
  ['a constructor', envelope({ constructor: { prototype: { polluted: 1 } } })],
  ['a key that is half a character', around('"note":""', '"note":"","\\ud800":1')],
  ['a parent that is a text', envelope({ from: 'formula:1' })],
  ['a parent that is a batch', envelope({ from: { formula: 'batch:1', entry: '' } })],
  ['a parent with markup', envelope({ from: { formula: 'formula:<b>', entry: '' } })],
  ['a parent with more to it', envelope({ from: { formula: 'formula:1', entry: '', url: 'x' } })],
  ['a parent with an entry too long', envelope({ from: { formula: 'formula:1', entry: 'e'.repeat(37) } })],
  // ids, which a link makes anew
  ['two lines of one id', inFile(formula({ lines: [LINE, { ...LINE, name: 'Cure', role: 'cure' }] }))],
  ['a line without an id', inFile(line({ id: undefined }))],
  ['an id that is empty', inFile(line({ id: '' }))],
  ['an id too long', inFile(line({ id: 'i'.repeat(41) }))],
];

/** Formulas of which none may come in, by file or by link. */
export const REFUSED_FORMULAS: readonly Case[] = [
  ['nothing', ''],
  ['a text', '"Salami"'],
  ['a list', '[]'],
  ['an empty object', '{}'],
  ['NaN', raw('25', 'NaN')],
  ['Infinity', raw('25', 'Infinity')],
  ['a hexadecimal number', raw('25', '0x19')],
  ['an octal number', raw('25', '025')],
  ['a number with a plus', raw('25', '+25')],
  ['a function', raw('25', '(()=>25)()')],
  ['undefined', raw('25', 'undefined')],
  ['a raw control character', raw('Salt', 'Sa\u0001lt')],
  // deep, wide and long
  ['a hundred thousand lists in lists', '['.repeat(100_000) + ']'.repeat(100_000)],
  ['a hundred thousand objects in objects', `${'{"a":'.repeat(100_000)}1`],
  ['a formula in a formula', JSON.stringify({ formula: SHORT_FORMULA })],
  ['half a megabyte of name', formula({ name: 'x'.repeat(512 * 1024) })],
  ['61 lines', formula({ lines: Array.from({ length: 61 }, (_, at) => ({ ...LINE, id: String(at) })) })],
  ['ten thousand lines', formula({ lines: Array.from({ length: 10_000 }, () => 0) })],
  ['ten species', formula({ species: Array.from({ length: 10 }, () => 'pork') })],
  ['21 allergens', line({ allergens: Array.from({ length: 21 }, () => 'milk') })],
  // keys that reach further than a formula
  ['a prototype', raw('"name":', '"__proto__":{"lines":[]},"name":')],
  ['a prototype in an amount', raw('"basis":', '"__proto__":null,"basis":')],
  ['a prototype by name', formula({ prototype: {} })],
  ['a key that turns into text', formula({ toString: 'x' })],
  ['a key that turns into JSON', formula({ toJSON: 'x' })],
  ['a key that looks like a promise', raw('"species":', '"then":"x","species":')],
  // numbers
  ['1e999', raw('25', '1e999')],
  ['minus 1e999', raw('25', '-1e999')],
  ['the largest number', formula({ fatPctOfMeat: Number.MAX_VALUE })],
  ['more fat than meat', formula({ fatPctOfMeat: 101 })],
  ['less than no fat', formula({ fatPctOfMeat: -0.001 })],
  ['a number of a thousand digits', raw('25', '9'.repeat(1000))],
  ['a text for a number', formula({ fatPctOfMeat: '25' })],
  ['NaN as a text', formula({ fatPctOfMeat: 'NaN' })],
  ['null for a number', formula({ fatPctOfMeat: null })],
  ['a list for a number', formula({ fatPctOfMeat: [25] })],
  ['true for a number', formula({ fatPctOfMeat: true })],
  ['minus salt', amount({ basis: 'pct-of-meat', amountPct: -2 })],
  ['salt beyond 100 %', amount({ basis: 'pct-of-meat', amountPct: 100.1 })],
  ['tons of it', amount({ basis: 'fixed', amountG: 1e9 })],
  ['a mix that is all this', amount({ basis: 'pct-of-total', amountPct: 100 })],
  [
    'more than a whole pack',
    amount({ basis: 'pack-share', packG: 1, packFraction: 1.01, doseGPerKg: 1, minimumG: 0 }),
  ],
  ['a casing as wide as a barrel', formula({ diameterMm: 301 })],
  ['a loss of all', formula({ targetLossPct: 100 })],
  [
    'nitrite beyond 100 %',
    line({ cure: { nitritePct: 101, nitratePct: 0, nitriteSalt: 'NaNO2', nitrateSalt: 'NaNO3' } }),
  ],
  [
    'a cure of another salt',
    line({ cure: { nitritePct: 1, nitratePct: 0, nitriteSalt: 'KCN', nitrateSalt: 'NaNO3' } }),
  ],
  // shapes
  ['lines that are no list', formula({ lines: { 0: LINE, length: 1 } })],
  ['a line that is a text', formula({ lines: ['Salt'] })],
  ['a line that is null', formula({ lines: [null] })],
  ['no lines', formula({ lines: undefined })],
  ['a name that is empty', formula({ name: '' })],
  ['a name of 81 letters', formula({ name: 'n'.repeat(81) })],
  ['a name that is a list', formula({ name: ['Salami'] })],
  ['a role that is none', line({ role: 'poison' })],
  ['a role that every object has', line({ role: 'constructor' })],
  ['an amount of no base', amount({ amountPct: 2 })],
  ['an amount of an unknown base', amount({ basis: 'toString', amountPct: 2 })],
  ['an amount of two bases', amount({ basis: 'pct-of-meat', amountPct: 2, amountG: 5 })],
  ['an amount that is a number', line({ amount: 2 })],
  ['a kind that is none', formula({ kind: 'cooked' })],
  ['a species that is none', formula({ species: ['human'] })],
  // texts that would not be shown as they are
  ['half a character', raw('"Salt"', '"Sa\\ud800lt"')],
  ['the other half alone', raw('"Salt"', '"\\udc00"')],
  ['halves in the wrong order', raw('"Salt"', '"\\ude00\\ud83d"')],
  ['a name written backwards', line({ name: 'Salt\u202etlaS' })],
  ['a nought', line({ name: 'Salt\0' })],
  ['a bell', line({ name: '\u0007Salt' })],
  ['a control character of the upper set', line({ name: 'Salt\u0085' })],
];

/** Formulas that come in, their first line by the very name that it shows. */
export const PLAIN_FORMULAS: readonly (readonly [name: string, text: string, shown: string])[] = [
  ...[
    '<script>alert(1)</script>',
    '"><img src=x onerror=alert(1)>',
    '=HYPERLINK("http://x","y")',
    'javascript:alert(1)',
    '{{7*7}}#{1}',
    '__proto__',
    "'; DROP TABLE entries; --",
    '\u{1F9C2} \u{20BB7}',
    `Z${'\u0301'.repeat(70)}`,
    'ملح',
  ].map((name) => [name, line({ name }), name] as const),
  ['a key that stands twice: the last counts', raw('"id":"salt"', '"name":"Gone","id":"salt"'), 'Salt'],
  ['minus nothing', raw('25', '-0'), 'Salt'],
];
