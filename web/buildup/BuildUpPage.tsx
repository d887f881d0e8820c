/** The design as it is drawn, to be changed: pick an element in the cut through the house, and edit its layers. */
import { useRoute } from 'preact-iso';
import { LoadedHouse } from '../parts/HouseFrame.tsx';
import { BuildUps } from './BuildUps.tsx';

export function BuildUpPage() {
  const { id } = useRoute().params;
  return (
    <LoadedHouse id={id} title="Build-ups" here="As drawn">
      {(house) => <BuildUps key={house.id} id={house.id} first={house.house} />}
    </LoadedHouse>
  );
}
