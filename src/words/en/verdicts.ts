import type { Relation, Source, Standing, Verdict } from '#core/rules/rule.ts';

const verdictWords: Readonly<Record<Verdict, string>> = {
  'within-limit': 'within limit',
  pending: 'pending',
  deviation: 'deviation',
  'no-reading': 'no reading',
  'does-not-apply': 'does not apply',
};

const standingWords: Readonly<Record<Standing, string>> = {
  read: 'read in the text named',
  'read-second-hand': 'read in a second-hand copy, not in the official text',
  'memory-high': 'from memory, high confidence; compare with the official text',
  'memory-medium': 'from memory, medium confidence; shown, never used for a verdict',
  'memory-low': 'from memory, low confidence; never used as a limit',
  derived: 'worked out from the published values',
  computed: 'computed for this app',
  'common-practice': 'common practice of the trade; no published source',
};

const relationWords: Readonly<Record<Relation, string>> = {
  '<': 'less than',
  '<=': 'at most',
  '>': 'more than',
  '>=': 'at least',
};

export const verdicts = {
  verdict: (verdict: Verdict): string => verdictWords[verdict],
  standing: (standing: Standing): string => standingWords[standing],
  relation: (relation: Relation): string => relationWords[relation],
  source: ({ body, title, section }: Source): string => [body, title, section].filter(Boolean).join(', '),
  ruleSet: { US: 'United States', CA: 'Canada', EU: 'European Union' },
};
