/** Houses that were shown already: their names stand at once while they are loaded again. In memory, and nowhere else. */
export interface HouseMet {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
}

const met = new Map<string, HouseMet>();

export const meet = ({ id, name, invented }: HouseMet): void => {
  met.set(id, { id, name, invented });
};

/** One that was never shown has a line left free for its name. */
export const metHouse = (id: string): HouseMet => met.get(id) ?? { id, name: '\u00A0', invented: false };
