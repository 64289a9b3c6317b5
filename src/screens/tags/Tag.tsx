import { QrDrawing } from '#ui/drawings/QrDrawing.tsx';
import type { Words } from '#words/en.ts';
import styles from './TagsScreen.module.css';
import type { TagView } from './tags-view.ts';

/** One tag, as it comes out on paper. */
export function Tag({
  tag,
  modules,
  words,
}: {
  tag: TagView;
  modules: readonly (readonly boolean[])[];
  words: Words;
}) {
  return (
    <li className={styles.tag}>
      <div className={styles.code}>
        <QrDrawing modules={modules} label={tag.opens} />
      </div>
      <div className={styles.words}>
        <p className={styles.number}>{tag.number}</p>
        <p className={styles.name}>{tag.name}</p>
        <p>{tag.lot}</p>
        <dl className={styles.weights}>
          <dt>{words.tags.green}</dt>
          <dd>{tag.green}</dd>
          <dt>{words.tags.target}</dt>
          <dd>
            <strong>{tag.target}</strong>
          </dd>
        </dl>
        <p className={styles.small}>{tag.stuffed}</p>
        <p className={styles.small}>{tag.code}</p>
      </div>
    </li>
  );
}
