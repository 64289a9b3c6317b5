import { useState } from 'react';
import type { Place } from '#record/place.ts';
import { useNowMs, zoneAt } from '#store/clock.ts';
import { useKit } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { List, Row } from '#ui/List.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { LotPage } from './LotPage.tsx';
import { ReceivePage } from './ReceivePage.tsx';
import { WHATS } from './received-form.ts';
import { receivedView } from './received-view.ts';

const MINUTE_MS = 60_000;
const FIRST_ROWS = 40;

/** The list; `new` and `new?what=cure` open the form; any other id is a lot, with `?correct` its correction. */
export function ReceivedScreen({ words, place, id = '' }: { words: Words; place: Place; id?: string }) {
  if (id === '') return <ReceivedList words={words} place={place} />;
  const [page = '', query = ''] = id.split('?');
  if (page !== 'new')
    return <LotPage key={page} words={words} place={place} id={page} correcting={query === 'correct'} />;
  const asked = new URLSearchParams(query).get('what');
  const what = WHATS.find((each) => each === asked) ?? null;
  return <ReceivePage key={id} words={words} place={place} what={what} />;
}

function ReceivedList({ words, place }: { words: Words; place: Place }) {
  const kit = useKit();
  const nowMs = useNowMs(MINUTE_MS);
  const [all, setAll] = useState(false);
  if (kit === undefined) return <Waiting label={words.app.waiting} />;
  const say = words.received;
  const view = receivedView({ lots: kit.lots, place, nowMs, zone: zoneAt(nowMs), words });
  const rows = all ? view.rows : view.rows.slice(0, FIRST_ROWS);
  return (
    <Page
      title={say.title}
      sentence={view.sentence}
      back={{ href: '#/kit', label: words.kit.toKit }}
      acts={
        <>
          {view.rows.length === 0 && <Button href="#/kit/received/new">{say.somethingElse}</Button>}
          <Button kind="primary" href={`#/kit/received/new${view.rows.length === 0 ? '?what=cure' : ''}`}>
            {view.rows.length === 0 ? say.receiveCure : say.receive}
          </Button>
        </>
      }
    >
      {rows.length > 0 && (
        <List label={say.title}>
          {rows.map(({ key, href, title, note, figure }) => (
            <Row key={key} href={href} title={title} note={note} {...figure} />
          ))}
        </List>
      )}
      {rows.length < view.rows.length && (
        <Button onPress={() => setAll(true)}>{say.older(view.rows.length - rows.length)}</Button>
      )}
    </Page>
  );
}
