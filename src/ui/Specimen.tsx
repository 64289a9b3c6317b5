import { type ReactNode, useState } from 'react';
import { Ask } from './Ask.tsx';
import { BigValue } from './BigValue.tsx';
import { Button } from './Button.tsx';
import { AirChart } from './charts/AirChart.tsx';
import { LossChart } from './charts/LossChart.tsx';
import { PhChart } from './charts/PhChart.tsx';
import { BarToLimit } from './drawings/BarToLimit.tsx';
import { PieceDrawing } from './drawings/PieceDrawing.tsx';
import { RailDrawing } from './drawings/RailDrawing.tsx';
import { SliceDrawing } from './drawings/SliceDrawing.tsx';
import { Spark } from './drawings/Spark.tsx';
import { Empty } from './Empty.tsx';
import { Figure, Figures } from './Figure.tsx';
import { List, Row } from './List.tsx';
import { Notice } from './Notice.tsx';
import { NumberPad } from './NumberPad.tsx';
import { Page } from './Page.tsx';
import { SavedMark } from './SavedMark.tsx';
import styles from './Specimen.module.css';
import { SpecimenFields } from './SpecimenFields.tsx';
import { FULL_RAIL, LOSS, PH, RAIL, WORKING } from './specimen-data.ts';
import { Tick } from './Tick.tsx';
import { Timer } from './Timer.tsx';
import { VerdictMark, VerdictSign } from './VerdictMark.tsx';
import { Waiting } from './Waiting.tsx';
import { Working } from './Working.tsx';

const CHART_WORDS = { waitingLabel: 'Drawing', failedLabel: 'Could not be drawn', tableLabel: 'The numbers' };
const VERDICTS = ['within-limit', 'pending', 'deviation', 'no-reading', 'does-not-apply'] as const;

/** Every part in its states, for whoever works on them. All figures are invented. */
export function Specimen() {
  const [weight, setWeight] = useState('553');
  const [ticked, setTicked] = useState(true);
  const [open, setOpen] = useState<'ask' | 'working' | null>(null);
  const table = { columns: ['day', 'loss, %'], rows: LOSS.xTicks.map(({ text }) => [text, 'invented']) };
  return (
    <Page
      back={{ href: '#/', label: 'Kit' }}
      line="Specimen · all figures are invented"
      title="Parts"
      sentence={[
        { text: 'Two of seven are at target weight.', strong: true },
        { text: ' Four more between ' },
        { text: '4 and 9 January', strong: true },
        { text: '. Number 6 dries slower than its neighbours: look at where it hangs.' },
      ]}
      acts={
        <>
          <Button onPress={() => setOpen('ask')}>Skip</Button>
          <Button kind="primary" onPress={() => setOpen('working')}>
            Save, next is 5
          </Button>
        </>
      }
      actsNote="Saved on this phone as you go."
    >
      <Part name="RailDrawing">
        <RailDrawing label="Middle rail" pieces={RAIL} />
      </Part>
      <Part name="PieceDrawing, BigValue, NumberPad">
        <div className={styles.weighing}>
          <div className={styles.piece}>
            <PieceDrawing diameterMm={55} lengthMm={325} lossFraction={0.35} targetFraction={0.38} seed={4} />
          </div>
          <BigValue label="Weight of piece 4" text={weight} unit="g" previous="was 561 g on 2 January" />
        </div>
        <NumberPad
          label="Weight in grams"
          text={weight}
          onText={setWeight}
          decimal=","
          decimalLabel="decimal comma"
          backLabel="take back"
        />
      </Part>
      <Part name="VerdictMark">
        <div>
          {VERDICTS.map((verdict) => (
            <VerdictMark
              key={verdict}
              verdict={verdict}
              word={verdict.replaceAll('-', ' ')}
              working={{ label: 'working', onOpen: () => setOpen('working') }}
            />
          ))}
        </div>
      </Part>
      <Part name="BarToLimit">
        <BarToLimit
          label="degree-hours above 60 °F"
          usedShare={0.158}
          usedText="189 used"
          projectedShare={0.29}
          projectedText="~350 at pH 5.3"
          limitText="limit 1200"
        />
        <BarToLimit label="past the limit" usedShare={1.1} usedText="1320 used" limitText="limit 1200" />
      </Part>
      <Part name="Figures">
        <Figures>
          <Figure label="pH after 12 h" value="5.46" working={WORKING} />
          <Figure label="chamber" value="23.4" unit="°C" />
          <Figure label="in the slice" value="4.4" unit="%" about interval="4.2 to 4.7" />
        </Figures>
      </Part>
      <Part name="PhChart">
        <PhChart
          {...CHART_WORDS}
          title="pH"
          label="pH fell from 5.78 to 5.46 in 12 hours"
          model={PH}
          table={table}
        />
      </Part>
      <Part name="LossChart">
        <LossChart
          {...CHART_WORDS}
          title="Loss"
          label="Loss reached 37 % on day 52"
          model={LOSS}
          table={table}
        />
      </Part>
      <Part name="AirChart">
        <AirChart
          {...CHART_WORDS}
          title="Air"
          label="An invented series"
          model={{ ...LOSS, marks: [] }}
          table={table}
        />
      </Part>
      <Part name="Tick">
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
      </Part>
      <Part name="List, Row">
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
      </Part>
      <SpecimenFields />
      <Part name="Notice, SavedMark">
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
      </Part>
      <Part name="Timer">
        <Timer
          label="Culture soaks"
          startMs={0}
          endMs={1_800_000}
          nowMs={600_000}
          note="until 14:20"
          overWord="over by"
        />
        <Timer
          label="Re-chill"
          startMs={0}
          endMs={60_000}
          nowMs={200_000}
          note="since 14:02"
          overWord="over by"
        />
        <Timer
          label="Degree-hours run out"
          endMs={200_000_000}
          nowMs={0}
          note="Saturday 04:10"
          overWord="over by"
        />
      </Part>
      <Part name="SliceDrawing">
        <div className={styles.slices}>
          <SliceDrawing seed={7} label="A slice" />
          <SliceDrawing
            seed={7}
            waterFromRim={[0.05, 0.2, 0.4, 0.6, 0.8, 0.9, 1]}
            label="Driest at the rim"
          />
          <SliceDrawing seed={7} waterFromRim={[0, 0, 0.9, 1, 1, 1, 1]} label="A dry rim and a wet heart" />
        </div>
      </Part>
      <Part name="RailDrawing, 24 pieces">
        <RailDrawing label="All rails" pieces={FULL_RAIL} />
      </Part>
      <Part name="Button">
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
      </Part>
      <Part name="Empty, Waiting">
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
      </Part>
      {open === 'ask' && (
        <Ask
          question="593 g is 40 g more than yesterday."
          detail="Pieces lose weight. Was it number 5?"
          changeLabel="Weigh again"
          keepLabel="Keep 593 g"
          onChange={() => setOpen(null)}
          onKeep={() => setOpen(null)}
        />
      )}
      <Working working={WORKING} open={open === 'working'} onClose={() => setOpen(null)} />
    </Page>
  );
}

function Part({ name, children }: { name: string; children: ReactNode }) {
  return (
    <section className={styles.part}>
      <h2>{name}</h2>
      {children}
    </section>
  );
}
