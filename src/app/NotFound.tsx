import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import type { FirstWords } from '#words/en/first.ts';

export function NotFound({ words }: { words: FirstWords }) {
  const { title, text, home } = words.app.notFound;
  return (
    <Page
      title={title}
      acts={
        <Button href="#/" kind="primary">
          {home}
        </Button>
      }
    >
      <p>{text}</p>
    </Page>
  );
}
