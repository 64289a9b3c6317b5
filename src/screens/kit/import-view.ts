import type { Place } from '#record/place.ts';
import type { ImportPlan } from '#store/backup.ts';
import type { Words } from '#words/en.ts';
import { decimal } from '#words/format.ts';

export type ImportView = {
  readonly from: string;
  readonly counts: readonly { readonly label: string; readonly value: string; readonly note?: string }[];
  /** Line and reason, the first of them; `more` says how many are left out. */
  readonly refused: readonly string[];
  readonly more: string | null;
  readonly faults: string | null;
  /** Null where nothing may be taken in. */
  readonly act: string | null;
  /** The file is not as it was written, or holds nothing new. */
  readonly nothing: string | null;
  readonly canRecover: boolean;
};

const MOST_LINES = 12;

/** What taking in a file would do, before it is done. `recovering` is the way for a damaged backup of one's own. */
export function importView(
  plan: ImportPlan,
  { recovering, place, zone, words }: { recovering: boolean; place: Place; zone: string; words: Words },
): ImportView {
  const say = words.keeping.takeIn;
  const { header, fresh, here, twins, unknown, problems, faults, ok, lines } = plan;
  const whole = (count: number) => decimal(count, 0, place);
  const some = (label: string, count: number, note?: string) =>
    count === 0 ? [] : [{ label, value: whole(count), ...(note ? { note } : {}) }];
  return {
    from: header
      ? say.from(words.dates.full(header.madeAtMs, zone), header.count, header.build)
      : say.noHeader,
    counts: [
      { label: say.fresh, value: whole(fresh.length) },
      { label: say.here, value: whole(here) },
      ...some(say.twins, twins.length, say.twinsNote),
      ...some(say.unknown, unknown, say.unknownNote),
      ...some(recovering ? say.setAside : say.refused, problems.length),
    ],
    refused: problems
      .slice(0, MOST_LINES)
      .map(({ line, code }) => say.line(line, words.keeping.problem(code))),
    more: problems.length > MOST_LINES ? say.more(problems.length - MOST_LINES) : null,
    faults: faults.length > 0 ? say.faults(faults.length) : null,
    act: ok && fresh.length > 0 ? say.act(fresh.length) : null,
    nothing: !ok ? say.notWhole : fresh.length === 0 ? say.nothing : null,
    canRecover: !ok && !recovering && lines > 0,
  };
}
