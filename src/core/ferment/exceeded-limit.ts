/** What the sources say to do once the degree-hour limit is passed, as codes. */
import type { RuleSetId, Source } from '#core/rules/rule.ts';

export type ExceededStep =
  | 'hold'
  | 'notify-authority'
  | 'sample-after-drying'
  | 'test-staphylococcus-and-toxin'
  | 'test-other-pathogens'
  | 'destroy-if-toxin'
  | 'decide-with-authority'
  | 'record';

/** Never offered: heat does not destroy the toxin, and more hours only add to it. */
export type NeverAfterExceeded = 'ferment-longer' | 'cook';

const LOTS: Source = {
  body: 'Canadian Food Inspection Agency',
  title: 'Meat Hygiene Manual of Procedures, chapter 4 (archived)',
  section: '4.16.2.1, disposition of lots that have not met degree-hours limits',
  standing: 'memory-high',
};
const NOTIFY: Source = {
  ...LOTS,
  section: '4.16.2.1, notification of each case',
  standing: 'read-second-hand',
};
const TOXIN: Source = { ...LOTS, section: '4.16.2.1, heat-stable toxin', standing: 'read-second-hand' };
const US: Source = {
  body: 'American Meat Institute',
  title: 'Good Manufacturing Practices for Fermented Dry and Semi-Dry Sausage Products (1997)',
  section: 'degree-hours exceeded',
  standing: 'memory-medium',
};
const RECORD: Source = {
  body: 'US Department of Agriculture',
  title: '9 CFR 417.3 and 417.5',
  section: 'corrective action and its record',
  standing: 'memory-high',
};

/**
 * What to do with a batch whose degree-hours reached the limit, in order, each with its source, and what never to do. Makes no verdict
 * and releases nothing: what the tests must show is for the local authority to say.
 *
 * Units: none. Valid: after a deviation of the degree-hour rule; EU has no such rule and gives the Canadian steps for reference.
 * Source: each step carries its own; the US text is from memory, medium confidence, and names no body to notify.
 * @example afterExceededLimit('US').steps.map(({ code }) => code)[0] // => 'hold'
 */
export function afterExceededLimit(ruleSet: RuleSetId): {
  steps: readonly { readonly code: ExceededStep; readonly source: Source }[];
  never: readonly { readonly code: NeverAfterExceeded; readonly source: Source }[];
} {
  const never = [
    { code: 'ferment-longer', source: TOXIN },
    { code: 'cook', source: TOXIN },
  ] as const;
  if (ruleSet === 'US')
    return {
      steps: [
        { code: 'hold', source: US },
        { code: 'test-staphylococcus-and-toxin', source: US },
        { code: 'decide-with-authority', source: US },
        { code: 'record', source: RECORD },
      ],
      never,
    };
  return {
    steps: [
      { code: 'hold', source: LOTS },
      { code: 'notify-authority', source: NOTIFY },
      { code: 'sample-after-drying', source: LOTS },
      { code: 'test-staphylococcus-and-toxin', source: LOTS },
      { code: 'test-other-pathogens', source: LOTS },
      { code: 'destroy-if-toxin', source: LOTS },
      { code: 'decide-with-authority', source: LOTS },
      { code: 'record', source: RECORD },
    ],
    never,
  };
}
