import type { Words } from '#words/en.ts';
import { PrintedPhoto } from './PrintedPhoto.tsx';
import type { Block } from './paginate.ts';
import styles from './RecordScreen.module.css';

/** One sheet of paper: head, blocks, foot with lot and page. */
export function PrintedSheet({
  head,
  made,
  chain,
  foot,
  paper,
  blocks,
  words,
}: {
  head: string;
  made: string;
  chain: string;
  foot: string;
  paper: 'A4' | 'Letter';
  blocks: readonly Block[];
  words: Words;
}) {
  return (
    <section className={`sheet ${styles.sheet}`} data-paper={paper.toLowerCase()} aria-label={foot}>
      <header className={styles.head}>{head}</header>
      <div className={styles.blocks}>
        {blocks.map((block) => (
          <div key={block.key}>
            <h2 className={styles.title}>{block.title}</h2>
            <BlockBody block={block} words={words} />
          </div>
        ))}
      </div>
      <footer className={styles.foot}>
        <span>{made}</span>
        <span>{chain}</span>
        <strong>{foot}</strong>
      </footer>
    </section>
  );
}

function BlockBody({ block, words }: { block: Block; words: Words }) {
  switch (block.kind) {
    case 'text':
      return block.lines.map((line) => <p key={line}>{line}</p>);
    case 'table':
      return <BlockTable block={block} />;
    case 'photos':
      return (
        <ul className={styles.photos}>
          {block.photos.map((photo) => (
            <PrintedPhoto key={photo.key} photo={photo} words={words} />
          ))}
        </ul>
      );
  }
}

function BlockTable({ block }: { block: Extract<Block, { kind: 'table' }> }) {
  const total = block.widths.reduce((sum, width) => sum + width, 0);
  return (
    <table className={styles.table}>
      <colgroup>
        {block.widths.map((width, at) => (
          <col key={`${block.columns[at] ?? at}`} width={`${Math.round((100 * width) / total)}%`} />
        ))}
      </colgroup>
      {block.columns.length > 0 && (
        <thead>
          <tr>
            {block.columns.map((column) => (
              <th key={column} scope="col">
                {column}
              </th>
            ))}
          </tr>
        </thead>
      )}
      <tbody>
        {block.rows.map(({ key, cells, struck }) => (
          <tr key={key}>
            {cells.map((cell, at) => (
              <td key={`${key}-${block.columns[at] ?? at}`}>
                {struck && at === 1 ? <Struck text={cell} /> : cell}
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The old value stays readable under its stroke; why it was struck stands below, unstruck. */
function Struck({ text }: { text: string }) {
  const [first = '', ...rest] = text.split('\n');
  return (
    <>
      <s>{first}</s>
      {rest.map((line) => `\n${line}`)}
    </>
  );
}
