import styles from './Sentence.module.css';

/** A run of words. Strong is kept for what the maker acts on. */
export type Token = { text: string; strong?: boolean };

/** A sentence made of tokens, so that nothing a maker typed is ever read as markup. */
export function Sentence({ tokens, small = false }: { tokens: readonly Token[]; small?: boolean }) {
  let at = 0;
  return (
    <p className={small ? styles.small : styles.sentence}>
      {tokens.map(({ text, strong }) => {
        const key = at;
        at += text.length + 1;
        return strong ? <strong key={key}>{text}</strong> : <span key={key}>{text}</span>;
      })}
    </p>
  );
}
