import { useState } from 'react';
import { batch as foldBatch } from '#record/batch.ts';
import type { Place } from '#record/place.ts';
import type { SubjectId } from '#record/subject.ts';
import { useNowMs } from '#store/clock.ts';
import { useKit, useTouching } from '#store/live.ts';
import { useAppend } from '#store/use-append.ts';
import { useFormulas } from '#store/use-formulas.ts';
import { Button } from '#ui/Button.tsx';
import { Figure, Figures } from '#ui/Figure.tsx';
import { List, Row } from '#ui/List.tsx';
import { Notice } from '#ui/Notice.tsx';
import { Page } from '#ui/Page.tsx';
import { Tick } from '#ui/Tick.tsx';
import { useAwake } from '#ui/use-awake.ts';
import { VerdictMark } from '#ui/VerdictMark.tsx';
import { Waiting } from '#ui/Waiting.tsx';
import { Working } from '#ui/Working.tsx';
import type { Words } from '#words/en.ts';
import { CostOfBatch } from './CostOfBatch.tsx';
import { madeFrom } from './made-from.ts';
import { StrikeLast } from './StrikeLast.tsx';
import styles from './WeighOutScreen.module.css';
import { type Weighed, WeighSheet } from './WeighSheet.tsx';
import { toWeigh, weighOutView } from './weigh-out-view.ts';

const HOUR_MS = 3_600_000;

type Props = { words: Words; place: Place; id: string };

export function WeighOutScreen({ words, place, id }: Props) {
  useAwake();
  const subject: SubjectId = `batch:${id}`;
  const entries = useTouching(subject);
  const kit = useKit();
  const formulas = useFormulas();
  const nowMs = useNowMs(HOUR_MS);
  const { saving, save } = useAppend(place.initials);
  const [open, setOpen] = useState<string | null>(null);
  const [working, setWorking] = useState(false);
  const [weighedName, setWeighedName] = useState('');
  if (entries === undefined || kit === undefined) return <Waiting label={words.app.waiting} />;
  const batch = foldBatch(subject, entries);
  if (batch === null) return <Page title={words.app.notFound.title}>{words.app.notFound.text}</Page>;
  const view = weighOutView({ batch, kit, place, nowMs, words });
  const what = toWeigh(open, view);
  const from = madeFrom(batch, formulas ?? []);
  const mark = words.app.saving(saving);
  const saved = mark && mark.state === 'saved' ? { ...mark, text: `${weighedName}: ${mark.text}` } : mark;

  const weighed = async ({ massG, lot, typed, kept }: Weighed): Promise<boolean> => {
    if (what === null) return false;
    const before = batch.weighedOut.get(what.key);
    const body = {
      massG,
      ...(lot ? { lot: lot as SubjectId } : {}),
      ...(what.scale ? { scale: what.scale } : {}),
      typed: { massG: typed },
      ...(kept ? { kept: ['massG'] } : {}),
    };
    const refs = [...(lot ? [lot as SubjectId] : []), ...(what.scale ? [what.scale] : [])];
    const result =
      what.targetG === null
        ? await save([
            { kind: 'meat-weighed', subject, refs, body: { ...body, part: what.key as 'lean' | 'fat' } },
          ])
        : await save([
            {
              kind: 'weighed-out',
              subject,
              refs,
              body: { ...body, line: what.key, targetG: what.targetG },
              ...(before ? { strikes: { id: before.id, reason: words.weighOut.sheet.strikeReason } } : {}),
            },
          ]);
    if (result.ok) setWeighedName(what.name);
    if (result.ok) setOpen(what.targetG === null ? null : view.following(what.key));
    return result.ok;
  };

  const keepCount = async () => {
    if (view.count === null) return;
    const { ok } = await save([{ kind: 'count-kept', subject, body: view.count.body }]);
    if (ok) setWeighedName(words.weighOut.count.name);
  };

  return (
    <Page
      title={words.weighOut.title}
      line={view.line}
      back={{ href: `#/batches/${id}`, label: words.app.back }}
      sentence={view.sentence}
      acts={
        view.next ? (
          <Button kind="primary" onPress={() => setOpen(view.next)}>
            {words.weighOut.next}
          </Button>
        ) : (
          view.lines.length > 0 &&
          !view.count?.open && (
            <Button kind="primary" href={`#/batches/${id}/bench`}>
              {words.weighOut.toBench}
            </Button>
          )
        )
      }
      actsNote={view.left > 0 ? words.weighOut.toGo(view.left) : undefined}
    >
      <div className={styles.verdicts}>
        {view.verdicts.map(({ key, verdict, word }, at) => (
          <VerdictMark
            key={key}
            verdict={verdict}
            word={word}
            {...(at === 0 && view.nitriteWorking
              ? { working: { label: words.app.working, onOpen: () => setWorking(true) } }
              : {})}
          />
        ))}
      </div>
      <List label={words.weighOut.meatFirst.map(({ text }) => text).join('')}>
        {view.meat.map((meat) => (
          <Row
            key={meat.part}
            title={meat.label}
            note={meat.note}
            figure={meat.value}
            unit={meat.unit}
            onPress={() => setOpen(meat.part)}
          />
        ))}
      </List>
      {view.count && (
        <Notice
          kind="caution"
          act={
            view.count.open && (
              <Button onPress={() => void keepCount()} disabled={saving.state === 'saving'}>
                {words.weighOut.count.keep}
              </Button>
            )
          }
        >
          {[...view.count.texts, view.count.open ? words.weighOut.count.ask : words.weighOut.count.kept].join(
            ' ',
          )}
        </Notice>
      )}
      <ul className={styles.lines} aria-label={words.weighOut.lines}>
        {view.lines.map((line) => (
          <Tick
            key={line.id}
            label={line.name}
            note={line.base}
            checked={line.done}
            onChecked={() => setOpen(line.id)}
            figure={line.value}
            unit={line.unit}
            figureNote={line.note}
          />
        ))}
      </ul>
      {view.outside.length > 0 && (
        <Notice kind="caution">{words.weighOut.outsideOnes(view.outside.join(', '))}</Notice>
      )}
      {view.last && (
        <StrikeLast
          last={view.last}
          saving={saving.state === 'saving'}
          onStrike={(id, reason) =>
            void save([{ kind: 'struck', subject, body: {}, strikes: { id, reason } }]).then(
              ({ ok }) => ok && setWeighedName(words.weighOut.last.name),
            )
          }
          words={words}
        />
      )}
      {view.noScale && <Notice kind="caution">{words.weighOut.noScale}</Notice>}
      <Figures>
        {view.figures.map(({ key, ...figure }) => (
          <Figure key={key} {...figure} />
        ))}
      </Figures>
      {from && (
        <Button kind="quiet" href={from.href}>
          {words.weighOut.madeFrom(from.number)}
        </Button>
      )}
      {view.lines.length > 0 && <CostOfBatch {...{ batch, place, words }} />}
      {what && (
        <WeighSheet
          key={what.key}
          what={what}
          place={place}
          words={words}
          saved={weighedName === '' && saved?.state === 'saved' ? null : saved}
          onWeighed={weighed}
          onClose={() => setOpen(null)}
        />
      )}
      {view.nitriteWorking && (
        <Working working={view.nitriteWorking} open={working} onClose={() => setWorking(false)} />
      )}
    </Page>
  );
}
