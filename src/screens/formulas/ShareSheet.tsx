import { useEffect, useState } from 'react';
import { type FormulaParent, writeFormulaFile } from '#files/formula-file.ts';
import { writeFormulaLink } from '#files/formula-link.ts';
import { handOver } from '#files/hand-over.ts';
import { shortLine } from '#files/plain-text.ts';
import { type Qr, qrOf } from '#files/qr.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Sheet } from '#ui/Sheet.tsx';
import type { Words } from '#words/en.ts';
import type { Version } from './FormulaPage.tsx';
import { QrPicture } from './QrPicture.tsx';
import styles from './ShareSheet.module.css';

type Made = { link: string | null; qr: Qr | null };

/** A version passed on: as a link, as a code to scan, as a file. No account and no server. */
export function ShareSheet({
  version,
  words,
  onClose,
}: {
  version: Version;
  words: Words;
  onClose: () => void;
}) {
  const [made, setMade] = useState<Made | null>(null);
  const [copied, setCopied] = useState<boolean | null>(null);
  const say = words.formulaSheets.share;
  const { formula, note } = version.body;
  const { subject, id: entry } = version;
  useEffect(() => {
    let left = false;
    void make(formula, { formula: subject, entry }).then((ready) => {
      if (!left) setMade(ready);
    });
    return () => {
      left = true;
    };
  }, [formula, subject, entry]);

  const copy = (link: string) => {
    navigator.clipboard.writeText(link).then(
      () => setCopied(true),
      () => setCopied(false),
    );
  };
  const file = () =>
    handOver({
      name: say.fileName(shortLine(formula.name, 60)),
      mime: 'application/json',
      content: writeFormulaFile({
        formula,
        note,
        from: { formula: subject, entry },
      }),
    });
  const link = made?.link ?? null;
  return (
    <Sheet open onClose={onClose} title={say.title} closeLabel={words.app.close}>
      <p>{say.text}</p>
      {made === null && <p role="status">{say.making}</p>}
      {made?.qr?.ok === true && <QrPicture modules={made.qr.modules} label={say.scan} />}
      {made?.qr?.ok === false && <Notice kind="caution">{say.tooLong}</Notice>}
      {made !== null && link === null && <Notice kind="error">{say.failed}</Notice>}
      {copied === false && <Notice kind="error">{say.notCopied}</Notice>}
      <div className={styles.acts}>
        {link !== null && (
          <Button kind="primary" onPress={() => copy(link)}>
            {copied ? say.copied : say.copy}
          </Button>
        )}
        <Button onPress={() => void file()}>{say.file}</Button>
      </div>
    </Sheet>
  );
}

async function make(formula: Version['body']['formula'], from: FormulaParent): Promise<Made> {
  const base = window.location.href.split('#')[0] ?? '';
  const written = await writeFormulaLink({ formula, base, from });
  return written.ok ? { link: written.link, qr: await qrOf(written.link) } : { link: null, qr: null };
}
