import type { Source } from './rule.ts';

/** Where the figures of the formula's rules were published, and how each came to be known. */

export const CFR_424_21: Source = {
  body: 'USDA FSIS',
  title: '9 CFR 424.21(c), curing agents',
  section: 'amounts per 100 lb, as printed in Nitrite and Nitrate in Human Health and Disease, ch. 5, p. 73',
  standing: 'read-second-hand',
};

export const FSIS_7620_3: Source = {
  body: 'USDA FSIS',
  title: "Directive 7620.3, Processing Inspectors' Calculations Handbook (1995)",
  section: 'chapter 3, p. 12, as quoted in a forum',
  standing: 'read-second-hand',
};

export const CFR_172_170: Source = {
  body: 'FDA',
  title: '21 CFR 172.170 and 172.175, curing preparations for home use',
  section: 'amount in the finished meat product',
  standing: 'read',
};

export const EU_2023_2108: Source = {
  body: 'European Commission',
  title: 'Regulation (EU) 2023/2108, category 08.3.1 non-heat-treated processed meat',
  section: 'added amounts as ions, as reported by trade services; the annex was not read',
  standing: 'read-second-hand',
};

export const CA_CURING: Source = {
  body: 'Canada',
  title: 'Meat Inspection Regulations, definition of curing',
  section: 'at least 100 and not more than 200 ppm, before smoking, cooking or fermentation; from a copy',
  standing: 'read-second-hand',
};

export const CFIA_4_16: Source = {
  body: 'CFIA',
  title: 'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
  section: '4.16, fermented meat products; from a copy',
  standing: 'read-second-hand',
};

export const EU_1169_2011: Source = {
  body: 'European Union',
  title: 'Regulation (EU) No 1169/2011',
  section: 'Annex II',
  standing: 'read',
};

export const US_FALCPA: Source = {
  body: 'United States',
  title: 'Major food allergens, with sesame by the FASTER Act of 2021',
  section: 'list of nine, from summaries of the act',
  standing: 'read',
};
