/** Edits of the elements of a house. Each changes the house that it is given. */
import { layerOf, materialNamed, type StartingPoint } from '../../src/fabric/index.ts';
import type { DesignElement, House } from '../../src/house.ts';

/** What an element begins with until its own figures are typed. */
const FIRST_AREA = 10; // [m²]
const FIRST_U_VALUE = 1; // [W/(m²K)]
export const firstLayer = () => layerOf(materialNamed('gypsum board'), 12.5);

/** A side of a square floor, four times: the shortest perimeter that it can have [m]. */
const shortestPerimeter = (area: number) => Math.ceil(4 * Math.sqrt(area));

export function addFrom(house: House, { element }: StartingPoint): void {
  const ground = element.to === 'ground' && element.perimeterM === undefined;
  add(house, {
    ...structuredClone(element),
    areaM2: FIRST_AREA,
    ...(ground ? { perimeterM: shortestPerimeter(FIRST_AREA) } : {}),
  });
}

export const addWithUValue = (house: House) =>
  add(house, { name: 'New element', areaM2: FIRST_AREA, uValue: FIRST_U_VALUE });

/** As good as empty: an element has at least one layer. */
export const addEmpty = (house: House) =>
  add(house, { name: 'New element', areaM2: FIRST_AREA, buildUp: { layers: [firstLayer()] } });

export function duplicateElement(house: House, at: number): void {
  const elements = house.elements ?? [];
  const copy = structuredClone(elements[at]);
  elements.splice(at + 1, 0, { ...copy, name: freeName(copy.name, elements) });
}

/** Whatever belonged to it belongs to no element from then on. */
export function removeElement(house: House, at: number): void {
  const { name } = elementAt(house, at);
  const rest = (house.elements ?? []).filter((_, i) => i !== at);
  if (rest.length === 0) delete house.elements;
  else house.elements = rest;
  for (const logger of house.loggers) if (logger.element === name) delete logger.element;
  for (const stage of house.stages ?? []) {
    if (stage.missing === undefined) continue;
    stage.missing = stage.missing.filter((it) => it !== name);
    if (stage.missing.length === 0) delete stage.missing;
  }
}

/** Loggers and stages call it by its new name. */
export function renameElement(house: House, at: number, name: string): void {
  const element = elementAt(house, at);
  const before = element.name;
  element.name = name;
  for (const logger of house.loggers) if (logger.element === before) logger.element = name;
  for (const { missing } of house.stages ?? [])
    missing?.forEach((it, i) => {
      if (it === before) missing[i] = name;
    });
}

/** A key that is undefined is left out from then on. */
export function changeElement(house: House, at: number, change: Partial<DesignElement>): void {
  Object.assign(elementAt(house, at), change);
}

/** What lies beyond it, without what only the ground or an unheated space had. */
export function putBeyond(house: House, at: number, to: NonNullable<DesignElement['to']>): void {
  const element = elementAt(house, at);
  element.to = to;
  if (to === 'ground') element.perimeterM ??= shortestPerimeter(element.areaM2);
  else for (const key of ['perimeterM', 'edgeInsulation', 'underfloor'] as const) delete element[key];
  if (to !== 'void') delete element.temperatureFactor;
}

export type NeighbourEntry = NonNullable<NonNullable<House['conditions']>['neighbour']>;

/** How warm it is beyond walls to a heated neighbour; without a temperature nothing is known of it. */
export function changeNeighbour(house: House, change: Partial<NeighbourEntry>): void {
  const { temperatureC, plusMinusK } = { ...house.conditions?.neighbour, ...change };
  const { neighbour, ...rest } = house.conditions ?? {};
  const known = temperatureC === undefined ? {} : { neighbour: { temperatureC, plusMinusK } };
  house.conditions = { ...rest, ...known } as House['conditions'];
  if (Object.keys(house.conditions ?? {}).length === 0) delete house.conditions;
}

/** @throws RangeError when there is none */
export function elementAt({ elements }: House, at: number): DesignElement {
  const element = elements?.[at];
  if (element === undefined) throw new RangeError(`there is no element ${at}`);
  return element;
}

function add(house: House, element: DesignElement): void {
  const elements = house.elements ?? [];
  house.elements = [...elements, { ...element, name: freeName(element.name, elements) }];
}

/** The name, or the name with the first figure that no other element has. */
function freeName(wanted: string, elements: readonly DesignElement[]): string {
  const taken = new Set(elements.map(({ name }) => name));
  const plain = wanted.replace(/ \d+$/, '');
  for (let i = 1; ; i++) {
    const name = i === 1 ? wanted : `${plain} ${i}`;
    if (!taken.has(name)) return name;
  }
}
