import type { Finding } from '#core/rules/rule.ts';
import type { Batch } from '#record/batch.ts';
import { batchFindings } from '#record/batch-findings.ts';
import type { Entry, EntryId } from '#record/entry.ts';
import { type Gap, gaps } from '#record/gaps.ts';
import type { Scale } from '#record/place.ts';
import type { Words } from '#words/en.ts';
import type { Said } from '#words/said.ts';

export type ReleaseView = {
  readonly line: string;
  readonly sentence: Said;
  readonly verdicts: readonly { key: string; verdict: Finding['verdict']; word: string }[];
  readonly gaps: readonly { key: Gap['code']; text: string }[];
  readonly findings: readonly Finding[];
  /** With a rule open or a gap, a decision needs its reason. */
  readonly needsReason: boolean;
};

export function releaseView({
  batch,
  entries,
  doubted,
  scales,
  nowMs,
  words,
}: {
  batch: Batch;
  entries: readonly Entry[];
  /** Entries that a wrong clock may have written. */
  doubted: ReadonlyMap<EntryId, unknown>;
  scales: readonly Scale[];
  nowMs: number;
  words: Words;
}): ReleaseView {
  const { release } = words;
  const findings = batchFindings(batch, scales, nowMs);
  const open = findings.filter(({ verdict }) => verdict !== 'within-limit' && verdict !== 'does-not-apply');
  const deviates = findings.some(({ verdict }) => verdict === 'deviation');
  const found = gaps({ batch, entries, doubted, deviates });
  const { decided } = batch;
  return {
    line: release.line(batch.opened.body.formula.name, batch.opened.body.lot),
    sentence: decided
      ? release.sentence.decided(
          release.past[decided.body.decision],
          words.dates.near(decided.atMs, nowMs, decided.zone),
        )
      : open.length > 0 || findings.length === 0
        ? release.sentence.open(open.length, found.length)
        : release.sentence.clear(found.length),
    verdicts: findings.map((finding) => ({
      key: finding.rule,
      verdict: finding.verdict,
      word: `${words.verdicts.verdict(finding.verdict)}: ${words.record.rule[finding.rule] ?? finding.rule}`,
    })),
    gaps: found.map((gap) => ({ key: gap.code, text: release.gap(gap) })),
    findings,
    needsReason: open.length > 0 || found.length > 0 || findings.length === 0,
  };
}
