import { hasJournal } from '#store/journal.ts';
import { toldIsSeen } from '#store/state.ts';
import { useStoreState } from '#store/use-store-state.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import type { FirstWords } from '#words/en/first.ts';
import styles from './StoreNotices.module.css';

/** What the store found, mended or lacks, above every room until it is seen: nothing is put right in silence. */
export function StoreNotices({ words: { start: say } }: { words: FirstWords }) {
  const { start, connection, copies, room } = useStoreState();
  const news = start.code === 'ready' ? start.told : [];
  const standing = [
    ...(connection === 'lost' ? [say.connectionLost] : []),
    ...(room === 'low' || room === 'used' ? [say.room[room]] : []),
    ...(copies === 'one' && hasJournal() ? [say.oneCopy] : []),
  ];
  if (news.length === 0 && standing.length === 0) return null;
  return (
    <div className={styles.notices}>
      {standing.map((text) => (
        <Notice key={text} kind="caution">
          {text}
        </Notice>
      ))}
      {news.length > 0 && (
        <Notice
          kind="caution"
          act={
            <Button kind="quiet" onPress={toldIsSeen}>
              {say.seen}
            </Button>
          }
        >
          {news.map(({ code, count }) => (
            <p key={code}>{say.told[code](count)}</p>
          ))}
          <a href="#/kit/keeping">{say.toKeeping}</a>
        </Notice>
      )}
    </div>
  );
}
