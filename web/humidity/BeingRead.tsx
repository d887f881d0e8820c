/** While the humidity of a house is worked out: how far that has come, where it takes long. Leaving the page ends it. */
import { useEffect, useState } from 'preact/hooks';
import type { HumidityProgress } from '../../server/api/loggerShapes.ts';
import { followHumidity } from '../api.ts';
import { ProgressLine } from '../parts/ProgressLine.tsx';
import { Skeleton } from '../parts/Skeleton.tsx';

export function BeingRead({ id }: { id: string }) {
  const [work, setWork] = useState<HumidityProgress['work']>(null);
  useEffect(() => followHumidity(id, (told) => setWork(told.work)), [id]);
  return (
    <>
      {work === null ? null : <ProgressLine {...work} />}
      <Skeleton height={1200} />
    </>
  );
}
