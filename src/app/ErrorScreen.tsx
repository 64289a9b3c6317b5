import { Component, type ReactNode } from 'react';
import { Button } from '#ui/Button.tsx';
import type { FirstWords } from '#words/en/first.ts';

type Props = { words: FirstWords; children: ReactNode };

/** Whatever breaks while drawing ends here, in words; what was saved is on disk already. */
export class ErrorScreen extends Component<Props, { failed: string | null }> {
  override state = { failed: null };

  static getDerivedStateFromError(error: unknown) {
    return { failed: error instanceof Error ? error.message : String(error) };
  }

  override render() {
    if (this.state.failed === null) return this.props.children;
    const { title, text, again } = this.props.words.app.error;
    return (
      <main>
        <h1>{title}</h1>
        <p>{text}</p>
        <p>
          <code>{this.state.failed}</code>
        </p>
        <Button kind="primary" onPress={() => window.location.reload()}>
          {again}
        </Button>
      </main>
    );
  }
}
