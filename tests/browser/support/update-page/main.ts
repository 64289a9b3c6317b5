/** The smallest page that can be updated: the app's own service worker and update watch, one field, one lazy part. */
import { BUILD } from '#store/build.ts';
import { watchForUpdates } from '../../../../src/app/updates.ts';
import '../../../../src/app/trusted-types.ts';

function part<K extends keyof HTMLElementTagNameMap>(name: K, id = ''): HTMLElementTagNameMap[K] {
  const found = document.querySelector<HTMLElementTagNameMap[K]>(`${name}${id}`);
  if (!found) throw new Error(`update-page: no ${name}${id}`);
  return found;
}

part('h1').textContent = BUILD;
part('button', '#lazy').onclick = async () => {
  const lazy = await import('./lazy.ts').catch(() => null);
  part('output').textContent = lazy?.part() ?? 'no such part';
};

const take = part('button', '#take');
void watchForUpdates({
  mayReload: () => part('input').value === '',
  onWaiting: (start) => {
    take.hidden = false;
    take.onclick = start;
  },
});
