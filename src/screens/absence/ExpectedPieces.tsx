import { Sentence } from '#ui/Sentence.tsx';
import type { Words } from '#words/en.ts';
import styles from './AbsenceScreen.module.css';
import type { ExpectRow } from './absence-view.ts';

/** A batch at the return: a sentence, and piece by piece what was expected and what was found. */
export function ExpectedPieces({ row, words }: { row: ExpectRow; words: Words }) {
  const say = words.absence;
  const { number, leaving, expected, found } = say.columns;
  const compared = row.pieces.some((piece) => piece.found !== null);
  return (
    <article className={styles.batch}>
      <h3>
        <a href={row.href}>{row.title}</a>
      </h3>
      <Sentence small tokens={row.sentence} />
      <details>
        <summary className={styles.summary}>{row.all}</summary>
        <table className={styles.table}>
          <thead>
            <tr>
              {[number, leaving, expected, ...(compared ? [found] : [])].map((column) => (
                <th key={column} scope="col">
                  {column}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {row.pieces.map((piece) => (
              <tr key={piece.key}>
                <th scope="row">{piece.number}</th>
                <td>{piece.leaving}</td>
                <td>{piece.expected}</td>
                {piece.found !== null && <td>{piece.found}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </article>
  );
}
