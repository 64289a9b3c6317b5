import type { Source } from '#core/rules/rule.ts';

/** Where the lines of the hazards page were published. What a rule set says comes from the rule sets themselves. */

export const FDA_GROWTH: Source = {
  body: 'FDA',
  title: 'Bad Bug Book, factors affecting the growth of some foodborne pathogens',
  section: 'table of water activity and pH, from an archived copy',
  standing: 'read',
};

export const ARS_GROWTH: Source = {
  body: 'USDA ARS',
  title: 'limits for growth of pathogens',
  section: 'as printed in a university extension sheet',
  standing: 'read-second-hand',
};

export const CFIA_DEGREE_HOURS: Source = {
  body: 'CFIA',
  title: 'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
  section: '4.16.2.1, from a copy',
  standing: 'read-second-hand',
};

export const CFIA_SAMPLING: Source = {
  body: 'CFIA',
  title: 'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
  section: 'options for E. coli O157:H7 and Salmonella, from a copy',
  standing: 'read-second-hand',
};

export const FSANZ_1_6_1: Source = {
  body: 'FSANZ',
  title: 'Standard 1.6.1, microbiological limits for food (Amendment 68)',
  section: 'uncooked fermented comminuted meat',
  standing: 'read',
};

export const EU_2073_2005: Source = {
  body: 'European Commission',
  title: 'Regulation (EC) No 2073/2005, Annex I, chapter 1',
  section: 'Listeria monocytogenes, note on products unable to support growth; from summaries',
  standing: 'read-second-hand',
};

export const CFR_318_10: Source = {
  body: 'USDA FSIS',
  title: '9 CFR 318.10',
  section: 'reserved, as listed in a copy of the code',
  standing: 'read',
};

export const NY_318_10: Source = {
  body: 'State of New York',
  title: '1 NYCRR 318.10, prescribed treatment of pork',
  section: 'curing of sausage, method 1',
  standing: 'read',
};

export const CFIA_TRICHINELLA: Source = {
  body: 'CFIA',
  title: 'Prescribed treatments of pork for Trichinella',
  section: 'A.1, note before the methods',
  standing: 'read',
};

export const TEXTBOOK_MOULD: Source = {
  body: 'Delicatessen textbook, United Kingdom',
  title: 'mould on dry sausage',
  section: 'author and page not noted',
  standing: 'read',
};

export const MOULD_SURVEY: Source = {
  body: 'Survey of Colonia Caroya, Argentina',
  title: 'indigenous filamentous fungi on dry sausages',
  section: 'summer sausages',
  standing: 'read',
};

export const NITRATE_REDUCTASE: Source = {
  body: 'Book on fermented meat',
  title: 'chapter on colour',
  section: 'nitrate reductase and pH, excerpt; author and page not noted',
  standing: 'read-second-hand',
};

export const MARCY_1985: Source = {
  body: 'Marcy et al.',
  title: 'Journal of Food Science, 1985',
  section: 'abstract: souring at 1.65, 2.415 and 3.3 % salt, 24 and 38 °C',
  standing: 'read',
};

export const VET_MANUAL: Source = {
  body: 'Veterinary manual',
  title: 'trichinellosis',
  section: 'control',
  standing: 'read',
};

export const BRITOVI: Source = {
  body: 'Controlled freezing inactivates Trichinella britovi',
  title: 'journal article, open copy',
  section: 'introduction: an infected boar after three weeks at −20 °C',
  standing: 'read',
};
