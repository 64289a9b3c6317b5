/**
 * What nearly every formula says, so that a link need not. It belongs to version 1 of the link: changing one character of it
 * makes every link that was ever given out unreadable. The nearer the end, the shorter the way back to it.
 */
const SELDOM =
  '"note":"whole-muscle"pct-of-total"fixed","amountG":"at-least","minimumG":"horse","poultry","wild-boar","venison","bear"' +
  'maltodextrin"honey"lactose"fructose"other"KNO3"KNO2"},"ownFatPct":"cutNdb":"10"hiddenSugarPct":0,"sulphiteMgPerKg":' +
  '"allergens":["sulphites","milk","mustard","celery"]}],"diameterMm":,"pieceG":,"targetLossPct":,"plannedDays":,"note":"';

const LINES = [
  '{"name":"Salami","kind":"comminuted","species":["pork","beef","lamb"],"fatPctOfMeat":25,"lines":[',
  '{"name":"Lean pork shoulder","role":"lean","amount":{"basis":"pct-of-lean","amountPct":100},"cutNdb":"100',
  '{"name":"Pork back fat","role":"fat","amount":{"basis":"pct-of-meat","amountPct":25}},',
  '{"name":"Sea salt","role":"salt","amount":{"basis":"pct-of-meat","amountPct":2.5}},',
  '{"name":"Curing salt","role":"cure","amount":{"basis":"pct-of-meat","amountPct":0.25},',
  '"cure":{"nitritePct":6.25,"nitratePct":4,"nitriteSalt":"NaNO2","nitrateSalt":"NaNO3"}},',
  '{"name":"Dextrose","role":"sugar","amount":{"basis":"pct-of-meat","amountPct":0.3},"sugarKind":"dextrose"},',
  '{"name":"Sugar","role":"sugar","amount":{"basis":"pct-of-meat","amountPct":0.2},"sugarKind":"sucrose"},',
  '{"name":"Starter culture","role":"starter","amount":{"basis":"pack-share","packG":25,"packFraction":0.25,',
  '"doseGPerKg":0.12,"minimumG":6.25}},{"name":"Mould culture","role":"mould","amount":{"basis":"per-piece","pieceG":',
  '{"name":"Red wine","role":"liquid","amount":{"basis":"g-per-kg-meat","doseGPerKg":10}},',
  '{"name":"Sodium ascorbate","role":"other","amount":{"basis":"pct-of-meat","amountPct":0.05}},',
  '{"name":"Garlic, fresh","role":"spice","amount":{"basis":"pct-of-meat","amountPct":0.3}},',
  '{"name":"Fennel seed, ground","role":"spice","amount":{"basis":"pct-of-meat","amountPct":0.2}},',
  '{"name":"Paprika, sweet","role":"spice","amount":{"basis":"g-per-kg-meat","doseGPerKg":2}},',
  '{"name":"White pepper, ground","role":"spice","amount":{"basis":"g-per-kg-meat","doseGPerKg":1.5}},',
  '{"name":"Black pepper, cracked","role":"spice","amount":{"basis":"g-per-kg-meat","doseGPerKg":3}},{"name":"',
];

export const LINK_DICTIONARY = SELDOM + LINES.join('');
