/** What only shows when all loggers of a house, its weather and the sun are seen together. */
import type { Where } from '../assessment.ts';
import type { Lay } from '../series/laying.ts';
import type { Place } from '../sky/place.ts';
import { carried } from './carried.ts';
import { clockByPeers } from './clockByPeers.ts';
import { clockByRhythm } from './clockByRhythm.ts';
import { clockBySun } from './clockBySun.ts';
import { duplicatesAmong } from './duplicates.ts';
import type { SenseFinding } from './finding.ts';
import { inSun } from './inSun.ts';
import { misplaced } from './misplaced.ts';
import { sceneOf } from './scene.ts';
import type { SensedLogger, SensedWeather } from './sensed.ts';
import { stopped } from './stopped.ts';

/**
 * Questions about the loggers of one house, each with its evidence and what would answer it in `house.json`.
 * Nothing is changed. Of two loggers that are one recording the later is seen no further; with a logger in the wrong
 * place, or one whose clock is off, the questions that build on place and clock wait for the answer.
 *
 * @param lay for a caller that lays the same readings on a grid itself
 */
export function senseOf(
  loggers: readonly SensedLogger[],
  weather: SensedWeather | null,
  place: Place,
  lay?: Lay,
): SenseFinding[] {
  const same = duplicatesAmong(loggers);
  const again = new Set(same.map(({ second }) => second));
  const scene = sceneOf(
    loggers.filter((_, k) => !again.has(k)),
    weather,
    place,
    lay,
  );
  const twins: SenseFinding[] = same.map(({ finding }) => finding);
  if (scene === null) return twins;
  twins.push(...stopped(scene));
  const places = misplaced(scene);
  if (places.length > 0) return [...twins, ...places, ...clockBySun(scene), ...carried(scene)];
  const bySun = clockBySun(scene);
  // a station whose own clock is off is no witness
  const byPeers = clockByPeers(bySun.length > 0 ? { ...scene, weatherTemperature: null } : scene);
  const asked = new Set(byPeers.map(({ where }) => nameOf(where)));
  const clockIsNotAsked = ({ where }: SenseFinding) => !asked.has(nameOf(where));
  return [
    ...twins,
    ...bySun,
    ...byPeers,
    ...clockByRhythm(scene).filter(clockIsNotAsked),
    ...inSun(scene).filter(clockIsNotAsked),
    ...carried(scene),
  ];
}

const nameOf = ({ file, column }: Where) => `${file}/${column ?? ''}`;
