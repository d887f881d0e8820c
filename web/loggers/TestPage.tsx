/** The next test as a page to take on site, and what a plug meter read in it. */
import { useRoute } from 'preact-iso';
import { HouseFrame } from '../parts/HouseFrame.tsx';
import { MeterReadings } from './MeterReadings.tsx';
import { TestPlan } from './TestPlan.tsx';
import './loggers.css';

export function TestPage() {
  const { id } = useRoute().params;
  return (
    <HouseFrame
      id={id}
      title="The next test"
      here="Loggers"
      foot={(house, again) => (
        <>
          <TestPlan house={house} />
          <MeterReadings house={house} again={again} />
        </>
      )}
    >
      {() => null}
    </HouseFrame>
  );
}
