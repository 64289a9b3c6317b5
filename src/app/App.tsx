import { type ReactNode, Suspense, useEffect } from 'react';
import { Route, Router, Switch } from 'wouter';
import { useHashLocation } from 'wouter/use-hash-location';
import { usePlace } from '#store/live.ts';
import { NavBar } from '#ui/NavBar.tsx';
import { Shell } from '#ui/Shell.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { BUILD } from './build.ts';
import { NotFound } from './NotFound.tsx';
import { type RoomName, routes } from './routes.tsx';

const ROOMS: readonly { name: RoomName; href: string }[] = [
  { name: 'today', href: '#/' },
  { name: 'batches', href: '#/batches' },
  { name: 'formulas', href: '#/formulas' },
  { name: 'chambers', href: '#/chambers' },
  { name: 'kit', href: '#/kit' },
];

export function App({ words }: { words: Words }) {
  const place = usePlace();
  const [location] = useHashLocation();
  if (place === undefined) return <Waiting label={words.app.waiting} />;
  return (
    <Router hook={useHashLocation}>
      <TopOnArrival key={location} />
      <Switch>
        {routes.map(({ path, room, screen: Screen, bench }) => (
          <Route key={path} path={path}>
            {(params) => (
              <Framed words={words} room={bench ? null : room}>
                <Screen
                  words={words}
                  place={place}
                  build={BUILD}
                  id={'id' in params ? String(params.id) : ''}
                />
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
      <Suspense fallback={<Waiting label={words.app.waiting} />}>{children}</Suspense>
    </Shell>
  );
}

/** A new page begins at its top; mounted anew for each address. */
function TopOnArrival() {
  useEffect(() => window.scrollTo(0, 0), []);
  return null;
}
