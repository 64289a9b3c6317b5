import { usePhoto } from '#store/use-photo.ts';
import { PhotoFrame } from '#ui/PhotoFrame.tsx';
import type { Words } from '#words/en.ts';
import type { PhotoRow } from './photos-view.ts';

/** One photo of the record, from this phone. */
export function PhotoOfRow({ row: { sha256, alt, caption }, words }: { row: PhotoRow; words: Words }) {
  const shown = usePhoto(sha256);
  return shown.state === 'here' ? (
    <PhotoFrame url={shown.url} alt={alt} caption={caption} instead="" amiss={false} />
  ) : (
    <PhotoFrame
      url={null}
      alt={alt}
      caption={caption}
      instead={words.photos[shown.state]}
      amiss={shown.state !== 'loading'}
    />
  );
}
