import { useEffect, useState } from 'react';
import { FORMULA_ROUTE, type ReadLink, readFormulaLink } from '#files/formula-link.ts';
import type { Place } from '#record/place.ts';
import { Button } from '#ui/Button.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import type { Words } from '#words/en.ts';
import { Arrived } from './Arrived.tsx';

/** A formula that came in a link: shown whole, and kept only when the maker says so. `id` is the code behind the route. */
export function FormulaFromScreen({ words, place, id }: { words: Words; place: Place; id: string }) {
  const [read, setRead] = useState<ReadLink | null>(null);
  const say = words.formulaSheets.arrive;
  useEffect(() => {
    let left = false;
    void readFormulaLink(`${FORMULA_ROUTE}${id}`).then((found) => {
      if (!left) setRead(found);
    });
    return () => {
      left = true;
    };
  }, [id]);
  if (read === null) return <Waiting label={words.app.waiting} />;
  if (read.ok)
    return (
      <Arrived
        arrived={{ formula: read.formula, note: say.linkNote, from: read.from }}
        {...{ words, place }}
      />
    );
  return (
    <Page
      title={say.title}
      sentence={[{ text: say.none }]}
      acts={
        <Button kind="primary" href="#/formulas">
          {say.toFormulas}
        </Button>
      }
    >
      <Notice kind="error">{say.problem[read.problem.code]}</Notice>
    </Page>
  );
}
