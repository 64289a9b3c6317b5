import { expect, test } from './support/fixtures.ts';
import { newWatch } from './support/watch.ts';

test('the watch itself notices a policy broken, an error, and a request to another origin', async ({
  browser,
  server,
}) => {
  const context = await browser.newContext();
  const watched = newWatch(server.url);
  await watched.over(context);
  const page = await context.newPage();
  await page.goto(server.url);
  await page.evaluate(() => {
    document.head.append(Object.assign(document.createElement('style'), { textContent: 'p { margin: 0 }' }));
    setTimeout(() => {
      throw new Error('thrown late');
    });
    console.error('said aloud');
  });
  // Each is told in an event of its own: a page that is left too early takes its last ones with it.
  const told = (text: string) => expect.poll(() => watched.complaints.join('\n')).toContain(text);
  for (const text of ['style-src', 'thrown late', 'said aloud']) await told(text);
  await page.goto('http://127.0.0.1:9/').catch(() => null);
  await told('other origin');
  await context.close();
});
