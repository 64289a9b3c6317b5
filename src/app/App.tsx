import { type ReactNode, Suspense, useEffect, useState } from 'react';
import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { usePlace, useStart } from '#store/live.ts';
import { Button } from '#ui/Button.tsx';
import { NavBar } from '#ui/NavBar.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Shell } from '#ui/Shell.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { NotFound } from './NotFound.tsx';
import { type RoomName, routes } from './routes.tsx';
import { StartScreen } from './StartScreen.tsx';
import { StoreNotices } from './StoreNotices.tsx';
import { Unsaved } from './Unsaved.tsx';
import { watchForUpdates } from './updates.ts';

const ROOMS: readonly { name: RoomName; href: string }[] = [
  { name: 'today', href: '#/' },
  { name: 'batches', href: '#/batches' },
  { name: 'formulas', href: '#/formulas' },
  { name: 'chambers', href: '#/chambers' },
  { name: 'kit', href: '#/kit' },
];

export function App({ words }: { words: Words }) {
  return (
    <>
      <Update words={words} />
      <Book words={words} />
    </>
  );
}

/** The screens, once the book has been checked; why it does not open, where it does not. */
function Book({ words }: { words: Words }) {
  const start = useStart();
  const place = usePlace();
  const [location] = useHashLocation();
  if (start.code !== 'ready' && start.code !== 'checking')
    return (
      <Shell>
        <StartScreen state={start} words={words} />
      </Shell>
    );
  if (start.code === 'checking' || place === undefined) return <Waiting label={words.app.waiting} />;
  return (
    <Router hook={useHashLocation}>
      <TopOnArrival key={location} />
      <Switch>
        {routes.map(({ path, room, screen: Screen, bench }) => (
          <Route key={path} path={path}>
            {(params) => (
              <Framed words={words} room={bench ? null : room}>
                <Screen words={words} place={place} id={'id' in params ? String(params.id) : ''} />
              </Framed>
            )}
          </Route>
        ))}
        <Route>
          <Framed words={words} room="today">
            <NotFound words={words} />
          </Framed>
        </Route>
      </Switch>
    </Router>
  );
}

/** The page in its frame; the bar of rooms is left out (null) where the bench needs the height. */
function Framed({ words, room, children }: { words: Words; room: RoomName | null; children: ReactNode }) {
  const rooms = ROOMS.map(({ name, href }) => ({ href, label: words.app.nav[name], current: name === room }));
  return (
    <Shell nav={room === null ? undefined : <NavBar label={words.app.nav.label} rooms={rooms} />}>
      {room !== null && <StoreNotices words={words} />}
      <Unsaved words={words}>
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

/** While a field holds something, no reload: it might be half typed. */
function nothingHalfTyped(): boolean {
  const typed = document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>(
    'input[type="text"], textarea',
  );
  return [...typed].every(({ value }) => value === '') && document.querySelector('dialog[open]') === null;
}

/** Offers a newer version once it lies whole on the phone; it begins only when the maker says so. */
function Update({ words }: { words: Words }) {
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
