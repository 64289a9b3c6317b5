import { useState } from 'react';
import { MOST_FORMULA_CHARS, readFormulaFile } from '#files/formula-file.ts';
import { readPicked, textOf } from '#files/pick-file.ts';
import { Notice } from '#ui/Notice.tsx';
import type { Words } from '#words/en.ts';
import type { ArrivedFormula } from './Arrived.tsx';
import styles from './FormulasScreen.module.css';

/** Picks a formula file. Nothing of it is used before all of it was checked, and nothing is kept here. */
export function TakeIn({ onArrived, words }: { onArrived: (arrived: ArrivedFormula) => void; words: Words }) {
  const [problem, setProblem] = useState<string | null>(null);
  const say = words.formulaSheets.arrive;
  const picked = async (file: File) => {
    const read = await readPicked(file, { mostBytes: 4 * MOST_FORMULA_CHARS });
    const text = read.ok ? textOf(read.bytes) : null;
    if (text === null) {
      setProblem(!read.ok && read.code === 'too-large' ? say.problem['too-large'] : say.problem['not-json']);
      return;
    }
    const found = readFormulaFile(text);
    if (found.ok)
      onArrived({ formula: found.formula, note: say.fileNote(found.note).slice(0, 400), from: found.from });
    else setProblem(say.problem[found.problem.code]);
  };
  return (
    <>
      <label className={styles.file}>
        {say.row}
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file) void picked(file);
          }}
        />
      </label>
      {problem && <Notice kind="error">{problem}</Notice>}
    </>
  );
}
