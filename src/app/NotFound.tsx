import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import type { Words } from '#words/en.ts';

export function NotFound({ words }: { words: Words }) {
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
