import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import type { Words } from '#words/en.ts';
import type { OpenBatchView } from './open-batch-view.ts';

/** What the formula itself says against being opened, with the way back to it. */
export function AgainstNotice({
  against,
  href,
  words,
}: {
  against: OpenBatchView['against'];
  href: string;
  words: Words;
}) {
  const say = words.openBatch;
  const toFormula = (
    <Button kind="quiet" href={href}>
      {say.toFormula}
    </Button>
  );
  if (against === null) return null;
  if (against.stops.length > 0)
    return (
      <Notice kind="error" title={say.stopped} act={toFormula}>
        {against.stops.join(' ')}
      </Notice>
    );
  return against.over ? (
    <Notice kind="caution" act={toFormula}>
      {say.over}
    </Notice>
  ) : null;
}
