import { useState } from 'react';
import { Ask } from './Ask.tsx';
import { BigValue } from './BigValue.tsx';
import { Button } from './Button.tsx';
import { PieceDrawing } from './drawings/PieceDrawing.tsx';
import { RailDrawing } from './drawings/RailDrawing.tsx';
import { Figure, Figures } from './Figure.tsx';
import { NumberPad } from './NumberPad.tsx';
import { Page } from './Page.tsx';
import styles from './Specimen.module.css';
import { SpecimenFields } from './SpecimenFields.tsx';
import { SpecimenPart } from './SpecimenPart.tsx';
import { SpecimenPictures } from './SpecimenPictures.tsx';
import { SpecimenRows } from './SpecimenRows.tsx';
import { RAIL, WORKING } from './specimen-data.ts';
import { VerdictMark } from './VerdictMark.tsx';
import { Working } from './Working.tsx';

const VERDICTS = ['within-limit', 'pending', 'deviation', 'no-reading', 'does-not-apply'] as const;

/** Every part in its states, for whoever works on them. All figures are invented. */
export function Specimen() {
  const [weight, setWeight] = useState('553');
  const [open, setOpen] = useState<'ask' | 'working' | null>(null);
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
      <SpecimenPart name="RailDrawing">
        <RailDrawing label="Middle rail" pieces={RAIL} />
      </SpecimenPart>
      <SpecimenPart name="PieceDrawing, BigValue, NumberPad">
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
      </SpecimenPart>
      <SpecimenPart name="VerdictMark">
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
      </SpecimenPart>
      <SpecimenPart name="Figures">
        <Figures>
          <Figure label="pH after 12 h" value="5.46" working={WORKING} />
          <Figure label="chamber" value="23.4" unit="°C" />
          <Figure label="in the slice" value="4.4" unit="%" about interval="4.2 to 4.7" />
        </Figures>
      </SpecimenPart>
      <SpecimenPictures />
      <SpecimenFields />
      <SpecimenRows onOpen={setOpen} />
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
