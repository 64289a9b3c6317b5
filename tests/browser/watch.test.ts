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
  await page.goto('http://127.0.0.1:9/').catch(() => null);
  const said = watched.complaints.join('\n');
  for (const text of ['style-src', 'thrown late', 'said aloud', 'other origin']) expect(said).toContain(text);
  await context.close();
});
