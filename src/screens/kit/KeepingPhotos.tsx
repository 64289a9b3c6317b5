import { useEffect, useRef, useState } from 'react';
import { handOver } from '#files/hand-over.ts';
import { readPicked } from '#files/pick-file.ts';
import { photoSums } from '#record/photo.ts';
import { useAllEntries } from '#store/live.ts';
import { photosHere, readPhoto, takeInPhotos } from '#store/photos.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import styles from './KeepingScreen.module.css';
import { boxesOf, MOST_BOX_BYTES } from './photos-keeping.ts';

type Said = { readonly kind: 'saved' | 'caution' | 'error'; readonly text: string };

/** Photos are no part of a backup: they go out in files of their own, and come back where an entry names them. */
export function KeepingPhotos({ words, day }: { words: Words; day: string }) {
  const say = words.photos.keeping;
  const entries = useAllEntries();
  const input = useRef<HTMLInputElement>(null);
  const [here, setHere] = useState<ReadonlySet<string> | null | undefined>(undefined);
  const [said, setSaid] = useState<Said | null>(null);
  const [taken, setTaken] = useState(0);
  const sums = entries && photoSums(entries);
  const key = `${taken} ${sums?.join() ?? ''}`;
  useEffect(() => {
    const asked = key.split(' ')[1]?.split(',').filter(Boolean) ?? [];
    void photosHere(asked).then(setHere);
  }, [key]);
  if (sums === undefined || here === undefined) return null;

  const give = async (from: number, to: number, part: number) => {
    try {
      const { photoBox } = await import('#files/photo-box.ts');
      const found = [];
      for (const sha256 of sums.filter((sum) => here?.has(sum)).slice(from, to)) {
        const photo = await readPhoto(sha256);
        if (photo.state === 'here') found.push({ name: `${sha256}.jpg`, bytes: photo.bytes });
      }
      const content = photoBox(found);
      const handed = await handOver({ name: say.fileName(day, part), mime: 'application/zip', content });
      const left = to - from - found.length;
      setSaid({
        kind: left > 0 || handed === 'share-cancelled' || handed === 'not-possible' ? 'caution' : 'saved',
        text: [say.handed[handed], ...(left > 0 ? [say.damaged(left)] : [])].join(' '),
      });
    } catch {
      setSaid({ kind: 'error', text: say.failed });
    }
  };

  const takeIn = async (file: File) => {
    const picked = await readPicked(file, { mostBytes: MOST_BOX_BYTES });
    if (!picked.ok)
      return setSaid({ kind: 'error', text: picked.code === 'too-large' ? say.tooLarge : say.notBox });
    const { openPhotoBox } = await import('#files/photo-box.ts');
    const box = openPhotoBox(picked.bytes);
    if (!box.ok) return setSaid({ kind: 'error', text: say.notBox });
    const found = await takeInPhotos(box.photos, new Set(sums));
    setTaken(taken + 1);
    const text = say.taken({ ...found, strange: found.strange + box.left });
    setSaid(found.refused ? { kind: 'error', text: `${text} ${say.noRoom}` } : { kind: 'saved', text });
  };

  return (
    <section className={styles.panel} aria-labelledby="photos">
      <h2 id="photos">{say.title}</h2>
      <p>{say.text}</p>
      {here === null && <Notice kind="error">{say.unread}</Notice>}
      {sums.length === 0 ? (
        <p>{say.none}</p>
      ) : (
        here && <Sentence tokens={say.counts(sums.length, here.size)} />
      )}
      <div className={styles.acts}>
        {boxesOf(here?.size ?? 0).map(({ from, to, part }) => (
          <Button key={part} onPress={() => void give(from, to, part)}>
            {say.give(from + 1, to, here?.size ?? 0)}
          </Button>
        ))}
        <input
          ref={input}
          type="file"
          hidden
          aria-label={say.take}
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void takeIn(file);
          }}
        />
        {sums.length > 0 && <Button onPress={() => input.current?.click()}>{say.take}</Button>}
      </div>
      <div aria-live="polite">{said && <Notice kind={said.kind}>{said.text}</Notice>}</div>
    </section>
  );
}
