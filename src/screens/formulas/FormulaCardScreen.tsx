import { useEffect, useState } from 'react';
import { writeFormulaLink } from '#files/formula-link.ts';
import { type Qr, qrOf } from '#files/qr.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useDraft } from '#store/use-draft.ts';
import { Button } from '#ui/Button.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { firstBench, readBench, restoreBench } from './bench-input.ts';
import { cardView } from './card-view.ts';
import styles from './FormulaCardScreen.module.css';
import type { Version } from './FormulaPage.tsx';
import { QrPicture } from './QrPicture.tsx';
import { versionLine } from './versions-view.ts';
import '#ui/print.css';
import { useFormulas } from '#store/use-formulas.ts';

/**
 * A formula as a card to print: what is on the screen is what comes out on paper. `id` is that of the formula, and behind a "~"
 * the number of its version where it is not the newest.
 */
export function FormulaCardScreen({ words, place, id: named }: { words: Words; place: Place; id: string }) {
  const [id = '', number] = named.split('~');
  const saved = useFormulas();
  const kept = useDraft(`formula-bench ${id}`, restoreBench);
  const subject: SubjectId = `formula:${id}`;
  const versions = saved?.find((each) => each.id === subject)?.versions ?? [];
  const version = number === undefined ? versions.at(-1) : versions[Number(number) - 1];
  const code = useCode(version);
  if (saved === undefined || kept.value === undefined) return <Waiting label={words.app.waiting} />;
  if (!version) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const { formula } = version.body;
  const texts = kept.value ?? firstBench(formula, place, words);
  const { bench } = readBench({ texts, formula, place, words });
  const view = cardView({ formula, line: versionLine(version, versions, words), bench, place, words });
  const say = words.formulaSheets;
  const [first, ...more] = view.heads;
  return (
    <Page
      title={say.card.title}
      line={formula.name}
      back={{ href: `#/formulas/${id}`, label: words.app.back }}
      sentence={say.card.sentence}
      acts={
        <Button kind="primary" disabled={code === null} onPress={() => window.print()}>
          {say.card.print}
        </Button>
      }
    >
      <article className={`sheet ${styles.card}`} data-paper={place.paper.toLowerCase()}>
        <h2>{view.title}</h2>
        <p>{view.facts.join(' · ')}</p>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">{first}</th>
              {more.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {view.rows.map(({ key, name, cells }) => (
              <tr key={key}>
                <th scope="row">{name}</th>
                {cells.map((cell, at) => (
                  <td key={more[at]}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
        {view.notes.map((note) => (
          <p key={note}>{note}</p>
        ))}
        <ul className={styles.cautions}>
          {view.cautions.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
        {code?.ok && (
          <figure className={styles.code}>
            <QrPicture modules={code.modules} label={say.share.scan} />
            <figcaption>{say.card.scan}</figcaption>
          </figure>
        )}
        {code?.ok === false && <p>{say.share.tooLong}</p>}
      </article>
    </Page>
  );
}

/** The formula as a link in a code; null while it is made. */
function useCode(version: Version | undefined): Qr | null {
  const [code, setCode] = useState<Qr | null>(null);
  useEffect(() => {
    let left = false;
    const make = async (): Promise<void> => {
      if (!version) return;
      const { formula } = version.body;
      const from = { formula: version.subject, entry: version.id };
      const base = window.location.href.split('#')[0] ?? '';
      const written = await writeFormulaLink({ formula, base, from });
      const made: Qr = written.ok ? await qrOf(written.link) : { ok: false, code: 'too-long' };
      if (!left) setCode(made);
    };
    void make();
    return () => {
      left = true;
    };
  }, [version]);
  return code;
}
