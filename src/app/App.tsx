import { lazy, type ReactNode, Suspense, use, useEffect, useState } from 'react';
import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import type { Place } from '#record/place.ts';
import { usePlace, useStart } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { NavBar } from '#ui/NavBar.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Shell } from '#ui/Shell.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { FirstWords } from '#words/en/first.ts';
import type { Language } from './language.ts';
import { NotFound } from './NotFound.tsx';
import { type RoomName, routes, type Screen } from './routes.tsx';
import { StoreNotices } from './StoreNotices.tsx';
import { Unsaved } from './Unsaved.tsx';
import { watchForUpdates } from './updates.ts';

const StartScreen = lazy(async () => ({ default: (await import('./StartScreen.tsx')).StartScreen }));

const ROOMS: readonly { name: RoomName; href: string }[] = [
  { name: 'today', href: '#/' },
  { name: 'batches', href: '#/batches' },
  { name: 'formulas', href: '#/formulas' },
  { name: 'chambers', href: '#/chambers' },
  { name: 'kit', href: '#/kit' },
];

export function App({ language }: { language: Language }) {
  return (
    <>
      <Update words={language.first} />
      <Book language={language} />
    </>
  );
}

/** The screens, once the book has been checked; why it does not open, where it does not. */
function Book({ language }: { language: Language }) {
  const words = language.first;
  const start = useStart();
  const place = usePlace();
  const [location] = useHashLocation();
  if (start.code !== 'ready' && start.code !== 'checking')
    return (
      <Shell>
        <Suspense fallback={<Waiting label={words.app.waiting} />}>
          <StartScreen state={start} language={language} />
        </Suspense>
      </Shell>
    );
  if (start.code === 'checking' || place === undefined) return <Waiting label={words.app.waiting} />;
  return (
    <Router hook={useHashLocation}>
      <TopOnArrival key={location} />
      <Switch>
        {routes.map((route) => (
          <Route key={route.path} path={route.path}>
            {(params) => (
              <Framed language={language} room={route.bench ? null : route.room}>
                {'first' in route ? (
                  <route.first words={words} place={place} />
                ) : (
                  <Told
                    screen={route.screen}
                    language={language}
                    place={place}
                    id={'id' in params ? String(params.id) : ''}
                  />
                )}
              </Framed>
            )}
          </Route>
        ))}
        <Route>
          <Framed language={language} room="today">
            <NotFound words={words} />
          </Framed>
        </Route>
      </Switch>
    </Router>
  );
}

/** A screen once every word is there. */
function Told({
  screen: Screen,
  language,
  place,
  id,
}: {
  screen: Screen;
  language: Language;
  place: Place;
  id: string;
}) {
  return <Screen words={use(language.all())} place={place} id={id} />;
}

/** The page in its frame; the bar of rooms is left out (null) where the bench needs the height. */
function Framed({
  language,
  room,
  children,
}: {
  language: Language;
  room: RoomName | null;
  children: ReactNode;
}) {
  const words = language.first;
  const rooms = ROOMS.map(({ name, href }) => ({ href, label: words.app.nav[name], current: name === room }));
  return (
    <Shell nav={room === null ? undefined : <NavBar label={words.app.nav.label} rooms={rooms} />}>
      {room !== null && <StoreNotices words={words} />}
      <Unsaved language={language}>
        <Suspense fallback={<Waiting label={words.app.waiting} />}>{children}</Suspense>
      </Unsaved>
    </Shell>
  );
}

/** A new page begins at its top; mounted anew for each address. */
function TopOnArrival() {
  // In braces: newer browsers answer with a promise, which an effect must not return.
  useEffect(() => {
    window.scrollTo(0, 0);
  }, []);
  return null;
}

/** While a field, or a value over the app's own keys, holds something, no reload: it might be half typed. */
function nothingHalfTyped(): boolean {
  const typed = document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>(
    'input[type="text"], textarea',
  );
  const keyed = document.querySelectorAll('[data-typed]');
  return (
    [...typed].every(({ value }) => value === '') &&
    [...keyed].every(({ textContent }) => !/\d/.test(textContent)) &&
    document.querySelector('dialog[open]') === null
  );
}

/** Offers a newer version once it lies whole on the phone; it begins only when the maker says so. */
function Update({ words }: { words: FirstWords }) {
  const [take, setTake] = useState<(() => void) | null>(null);
  useEffect(() => {
    void watchForUpdates({ onWaiting: (start) => setTake(() => start), mayReload: nothingHalfTyped });
  }, []);
  if (take === null) return null;
  return (
    <Notice
      kind="saved"
      act={
        <Button kind="quiet" onPress={take}>
          {words.app.update.act}
        </Button>
      }
    >
      {words.app.update.text}
    </Notice>
  );
}
