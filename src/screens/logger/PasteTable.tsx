import { useState } from 'react';
import type { PickedFile } from '#files/pick-file.ts';
import { Button } from '#ui/Button.tsx';
import { TextField } from '#ui/TextField.tsx';
import type { Words } from '#words/en.ts';
import styles from './LoggerFile.module.css';

/** The same table as text, for a logger's own app that shows it and gives out no file. */
export function PasteTable({ words, onPicked }: { words: Words; onPicked: (picked: PickedFile) => void }) {
  const [text, setText] = useState('');
  const say = words.logger.paste;
  return (
    <details>
      <summary className={styles.summary}>{say.title}</summary>
      <div className={styles.found}>
        <TextField label={say.label} hint={say.hint} text={text} onText={setText} long capitals="none" />
        <Button
          disabled={text.trim() === ''}
          onPress={() =>
            onPicked({ ok: true, name: say.name, bytes: new Uint8Array(new TextEncoder().encode(text)) })
          }
        >
          {say.act}
        </Button>
      </div>
    </details>
  );
}
