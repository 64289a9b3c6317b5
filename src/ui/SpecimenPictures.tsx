import { AirChart } from './charts/AirChart.tsx';
import { LossChart } from './charts/LossChart.tsx';
import { PhChart } from './charts/PhChart.tsx';
import { BarToLimit } from './drawings/BarToLimit.tsx';
import { RailDrawing } from './drawings/RailDrawing.tsx';
import { SliceDrawing } from './drawings/SliceDrawing.tsx';
import styles from './Specimen.module.css';
import { SpecimenPart } from './SpecimenPart.tsx';
import { FULL_RAIL, LOSS, PH } from './specimen-data.ts';
import { Timer } from './Timer.tsx';

const CHART_WORDS = { waitingLabel: 'Drawing', failedLabel: 'Could not be drawn', tableLabel: 'The numbers' };

/** The drawings and charts of the specimen page. */
export function SpecimenPictures() {
  const table = { columns: ['day', 'loss, %'], rows: LOSS.xTicks.map(({ text }) => [text, 'invented']) };
  return (
    <>
      <SpecimenPart name="BarToLimit">
        <BarToLimit
          label="degree-hours above 60 °F"
          usedShare={0.158}
          usedText="189 used"
          projectedShare={0.29}
          projectedText="~350 at pH 5.3"
          limitText="limit 1200"
        />
        <BarToLimit label="past the limit" usedShare={1.1} usedText="1320 used" limitText="limit 1200" />
      </SpecimenPart>
      <SpecimenPart name="PhChart">
        <PhChart
          {...CHART_WORDS}
          title="pH"
          label="pH fell from 5.78 to 5.46 in 12 hours"
          model={PH}
          table={table}
        />
      </SpecimenPart>
      <SpecimenPart name="LossChart">
        <LossChart
          {...CHART_WORDS}
          title="Loss"
          label="Loss reached 37 % on day 52"
          model={LOSS}
          table={table}
        />
      </SpecimenPart>
      <SpecimenPart name="AirChart">
        <AirChart
          {...CHART_WORDS}
          title="Air"
          label="An invented series"
          model={{ ...LOSS, marks: [] }}
          table={table}
        />
      </SpecimenPart>
      <SpecimenPart name="SliceDrawing">
        <div className={styles.slices}>
          <SliceDrawing seed={7} label="A slice" />
          <SliceDrawing
            seed={7}
            waterFromRim={[0.05, 0.2, 0.4, 0.6, 0.8, 0.9, 1]}
            label="Driest at the rim"
          />
          <SliceDrawing seed={7} waterFromRim={[0, 0, 0.9, 1, 1, 1, 1]} label="A dry rim and a wet heart" />
        </div>
      </SpecimenPart>
      <SpecimenPart name="RailDrawing, 24 pieces">
        <RailDrawing label="All rails" pieces={FULL_RAIL} />
      </SpecimenPart>
      <SpecimenPart name="Timer">
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
      </SpecimenPart>
    </>
  );
}
