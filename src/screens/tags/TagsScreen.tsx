import { useEffect, useMemo, useState } from 'react';
import { qrOf } from '#files/qr.ts';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useTouching } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { Choice } from '#ui/Choice.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { Tag } from './Tag.tsx';
import styles from './TagsScreen.module.css';
import { type TagView, tagsView } from './tags-view.ts';
import '#ui/print.css';

type Drawn = ReadonlyMap<string, readonly (readonly boolean[])[]>;

/** Tags to print, cut and tie on: what is on the screen is what comes out on paper. */
export function TagsScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const [which, setWhich] = useState<'all' | 'up'>('up');
  const appAddress = window.location.href;
  const view = useMemo(() => {
    const batch = entries && foldBatch(subject, entries);
    return batch ? tagsView({ batch, which, place, appAddress, words }) : null;
  }, [entries, subject, which, place, appAddress, words]);
  const drawn = useCodes(view?.tags);
  if (entries === undefined) return <Waiting label={words.app.waiting} />;
  if (view === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { tags } = words;
  return (
    <Page
      title={tags.title}
      line={view.line}
      back={{ href: `#/batches/${id}/hanging`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        view.tags.length > 0 && (
          <Button kind="primary" onPress={() => window.print()} disabled={drawn === null}>
            {tags.print}
          </Button>
        )
      }
    >
      <div className={styles.unprinted}>
        <Choice
          label={tags.only}
          options={[
            { value: 'up', label: tags.up },
            { value: 'all', label: tags.all },
          ]}
          value={which}
          onValue={setWhich}
        />
        <p>
          <a href="#/tag">{tags.find}</a>
        </p>
      </div>
      {drawn === null ? (
        <p>{tags.making}</p>
      ) : (
        <ol className={styles.tags}>
          {view.tags.map((tag) => (
            <Tag key={tag.key} tag={tag} modules={drawn.get(tag.address) ?? []} words={words} />
          ))}
        </ol>
      )}
    </Page>
  );
}

/** The codes of all tags, or null while they are made. */
function useCodes(tags: readonly TagView[] | undefined): Drawn | null {
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  useEffect(() => {
    let left = false;
    const addresses = (tags ?? []).map(({ address }) => address);
    void Promise.all(addresses.map(qrOf)).then((codes) => {
      if (left) return;
      setDrawn(
        new Map(codes.flatMap((code, at) => (code.ok ? [[addresses[at] ?? '', code.modules] as const] : []))),
      );
    });
    return () => {
      left = true;
    };
  }, [tags]);
  return tags?.every(({ address }) => drawn?.has(address)) ? drawn : null;
}
