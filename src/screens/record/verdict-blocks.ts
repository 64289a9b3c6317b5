/** What the rules say of the batch: today, and on the day of each decision. */
import type { Finding } from '#core/rules/rule.ts';
import { batchFindings } from '#record/batch-findings.ts';
import { ofKind } from '#record/fold.ts';
import { live } from '#record/strikes.ts';
import { decimal } from '#words/format.ts';
import type { Block } from './paginate.ts';
import type { Given } from './record-view.ts';

/** The rules as they answer today, each with its source. */
export function verdictBlocks(given: Given): Block[] {
  const { batch, kit, place, nowMs, words } = given;
  const { record } = words;
  const findings = batchFindings(batch, kit.scales, nowMs);
  const name = (finding: Finding) => record.rule[finding.rule] ?? finding.rule;
  const figure = ({ value, limit }: Finding) =>
    value === null || limit === null
      ? ''
      : `${decimal(value, limit.unit === 'pH' ? 2 : 1, place, limit.relation.startsWith('<') ? 'up' : 'down')} ${limit.unit}`;
  const missing: Readonly<Record<string, string>> = { ...words.weighOut.missing, ...words.ferment.missing };
  const verdict = (finding: Finding) =>
    [words.verdicts.verdict(finding.verdict), ...finding.missing.map((code) => missing[code] ?? code)].join(
      ', ',
    );
  const limits = findings.flatMap((finding) => (finding.limit ? [{ finding, limit: finding.limit }] : []));
  return [
    {
      kind: 'table',
      key: 'verdicts',
      title: record.parts.verdicts,
      columns: record.verdictColumns,
      widths: [26, 22, 28, 24],
      rows: findings.map((finding) => ({
        key: finding.rule,
        cells: [
          name(finding),
          figure(finding),
          finding.limit ? words.workings.limit(finding.limit, place).value : '',
          verdict(finding),
        ],
        struck: false,
      })),
    },
    {
      kind: 'text',
      key: 'sources',
      title: words.workings.words.sources,
      lines: limits.map(({ finding, limit }) => {
        const { text, standing } = words.workings.source(limit.source);
        return record.sourceOf(name(finding), text, standing);
      }),
    },
  ];
}

/** Each decision that stands, with what was known on its day, as it was kept: verdicts of today may differ, and stand above. */
export function decisionBlocks({ entries, place, words }: Given): Block[] {
  const { record } = words;
  return ofKind(live(entries), 'decided').map(({ id, body, by, atMs, zone }) => ({
    kind: 'table',
    key: `decided-${id}`,
    title: record.decision(record.value(body.decision), words.dates.full(atMs, zone), by),
    columns: record.verdictColumns,
    widths: [26, 22, 28, 24],
    rows: [
      ...body.verdicts.map(({ rule, value, limit, unit, verdict }) => ({
        key: rule,
        cells: [
          record.rule[rule] ?? rule,
          value === null ? '' : `${words.workings.exactly(value, place)} ${unit}`,
          limit === null ? '' : `${words.workings.exactly(limit, place)} ${unit}`,
          record.verdictThen(verdict),
        ],
        struck: false,
      })),
      {
        key: 'then',
        cells: [
          record.knownThen,
          record.builtThen(words.verdicts.ruleSet[body.ruleSet], body.build),
          body.note ?? '',
          body.gaps.length === 0 ? record.noGapsThen : record.gapsThen(body.gaps),
        ],
        struck: false,
      },
    ],
  }));
}
