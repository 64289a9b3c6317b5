import { useState } from 'react';
import { Button } from './Button.tsx';
import { PieceDrawing } from './drawings/PieceDrawing.tsx';
import { Spark } from './drawings/Spark.tsx';
import { Empty } from './Empty.tsx';
import { List, Row } from './List.tsx';
import { Notice } from './Notice.tsx';
import { SavedMark } from './SavedMark.tsx';
import styles from './Specimen.module.css';
import { SpecimenPart } from './SpecimenPart.tsx';
import { LOSS } from './specimen-data.ts';
import { Tick } from './Tick.tsx';
import { VerdictSign } from './VerdictMark.tsx';
import { Waiting } from './Waiting.tsx';

/** Rows, notices and what is pressed, on the specimen page. */
export function SpecimenRows({ onOpen: setOpen }: { onOpen: (open: 'ask' | 'working' | null) => void }) {
  const [ticked, setTicked] = useState(true);
  return (
    <>
      <SpecimenPart name="Tick">
        <ul>
          <Tick
            label="Lean pork"
            note="meat"
            checked={ticked}
            onChecked={setTicked}
            figure="2,410"
            unit="g"
          />
          <Tick
            label="Curing salt, 6.25 % nitrite"
            note="0.25 % of meat, rounded down"
            checked={false}
            onChecked={setTicked}
            figure="8.03"
            unit="g"
            figureNote="small scale, ± 0.3 %"
          />
        </ul>
      </SpecimenPart>
      <SpecimenPart name="List, Row">
        <List label="Batches">
          <Row
            title="Fennel salami"
            note="lot 2611-B · day 52"
            figure="112"
            unit="g to go"
            href="#/specimen"
          />
          <Row
            title="pH before 04:10"
            note="Fennel salami"
            mark={<VerdictSign verdict="pending" />}
            onPress={() => setOpen('working')}
            figure="5.46"
            figureNote="at 12 h"
          />
          <Row
            title="Plain row with a long name that needs two lines"
            mark={
              <Spark
                label="falling"
                points={LOSS.series.flatMap((each) => (each.kind === 'measured' ? each.points : []))}
              />
            }
          />
        </List>
      </SpecimenPart>
      <SpecimenPart name="Notice, SavedMark">
        <Notice kind="caution" title="Nitrite is weighed, not guessed">
          Use the small scale: too much is dangerous.
        </Notice>
        <Notice kind="offline">No network. Everything works; nothing is sent.</Notice>
        <Notice
          kind="error"
          title="Not saved"
          act={
            <Button kind="quiet" onPress={() => setOpen(null)}>
              Try again
            </Button>
          }
        >
          The phone refused to write.
        </Notice>
        <Notice kind="saved">The second copy is up to date.</Notice>
        <SavedMark state="saving" text="Saving" />
        <SavedMark
          state="saved"
          text="Saved on this phone"
          act={
            <Button kind="quiet" onPress={() => setOpen(null)}>
              Undo
            </Button>
          }
        />
        <SavedMark
          state="not-saved"
          text="Not saved"
          act={
            <Button kind="quiet" onPress={() => setOpen(null)}>
              Try again
            </Button>
          }
        />
      </SpecimenPart>
      <SpecimenPart name="Button">
        <div className={styles.buttons}>
          <Button kind="primary" href="#/specimen">
            Weigh round
          </Button>
          <Button href="#/specimen">What if…</Button>
        </div>
        <div className={styles.buttons}>
          <Button kind="primary" onPress={() => setOpen(null)} disabled>
            Cannot yet
          </Button>
          <Button kind="quiet" onPress={() => setOpen('ask')}>
            Correct this
          </Button>
        </div>
      </SpecimenPart>
      <SpecimenPart name="Empty, Waiting">
        <Empty
          title="Nothing hangs here yet"
          picture={
            <PieceDrawing diameterMm={55} lengthMm={200} lossFraction={null} targetFraction={0.38} seed={9} />
          }
          act={<Button href="#/specimen">Begin a batch</Button>}
        >
          What is stuffed and weighed will hang on this rail.
        </Empty>
        <Waiting label="Reading the book" />
      </SpecimenPart>
    </>
  );
}
