/** All kinds of house that methods are proved on. */
import { extensionLogged, extensionUnlogged, loftRoom, studio } from './besideOthers.ts';
import type { HouseType } from './houseType.ts';
import { bareMasonry, bungalow, cavityHouse, insideInsulated, outsideInsulated, terrace } from './masonry.ts';
import { cabin, crossLaminated, logHouse, strawHouse, timberFrame } from './timberHouses.ts';

export const houseTypes: readonly HouseType[] = [
  timberFrame,
  cavityHouse,
  outsideInsulated,
  insideInsulated,
  bareMasonry,
  extensionLogged,
  extensionUnlogged,
  loftRoom,
  cabin,
  strawHouse,
  studio,
  crossLaminated,
  logHouse,
  bungalow,
  terrace,
];

export function houseTypeNamed(name: string): HouseType {
  const type = houseTypes.find((it) => it.name === name);
  if (type === undefined)
    throw new RangeError(`no house type "${name}"; there are: ${houseTypes.map((it) => it.name).join('; ')}`);
  return type;
}
