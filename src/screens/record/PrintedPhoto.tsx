import { usePhoto } from '#store/use-photo.ts';
import type { Words } from '#words/en.ts';
import type { PhotoBlock } from './paginate.ts';
import styles from './RecordScreen.module.css';

/** One photo on paper. Where its bytes are not here, or not as they were, that stands in its place. */
export function PrintedPhoto({
  photo: { sha256, alt, caption },
  words: { photos, record },
}: {
  photo: PhotoBlock['photos'][number];
  words: Words;
}) {
  const shown = usePhoto(sha256);
  const instead = { loading: photos.loading, missing: record.photoMissing, damaged: record.photoDamaged };
  return (
    <li>
      <figure className={styles.photo}>
        {shown.state === 'here' ? (
          <img className={styles.picture} src={shown.url} alt={alt} />
        ) : (
          <p className={styles.instead}>{instead[shown.state]}</p>
        )}
        <figcaption>{caption}</figcaption>
      </figure>
    </li>
  );
}
