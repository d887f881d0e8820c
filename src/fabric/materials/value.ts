/** What the library says of a material, and how each figure is known. */

/** READ in the source named, MEMORY of it and to be confirmed, or PRACTICE of the trade without a source. */
export type Mark = 'READ' | 'MEMORY' | 'PRACTICE';

export interface Source {
  readonly mark: Mark;
  readonly source: string;
}

export interface Value extends Source {
  readonly value: number;
}

export type MaterialGroup =
  | 'boards and plasters'
  | 'timber'
  | 'insulation'
  | 'masonry and concrete'
  | 'sheets and membranes'
  | 'glass and metals'
  | 'air';

/** How it holds back vapour: a factor times its thickness, an sd [m] whatever its thickness. */
export type VapourResistance =
  /** μ [–] where it is dry, and where it is humid. */
  | ({ readonly kind: 'factor'; readonly dry: number; readonly humid: number } & Source)
  /** sd [m] */
  | ({ readonly kind: 'thickness'; readonly thickness: number } & Source);

export interface SolidMaterial {
  readonly kind: 'solid';
  readonly name: string;
  readonly group: MaterialGroup;
  /** Other names that it goes by on site. */
  readonly aliases: readonly string[];
  /** [W/(mK)] */
  readonly conductivity: Value;
  /** [kg/m³] */
  readonly density: Value;
  /** [J/(kgK)] */
  readonly specificHeat: Value;
  readonly vapour: VapourResistance;
}

/** Too thin to resist heat: known by its sd alone. */
export interface SheetMaterial {
  readonly kind: 'sheet';
  readonly name: string;
  readonly group: MaterialGroup;
  readonly aliases: readonly string[];
  readonly vapour: VapourResistance & { readonly kind: 'thickness' };
}

/** Its resistance follows from thickness and heat flow, by ISO 6946. */
export interface AirMaterial {
  readonly kind: 'air';
  readonly name: string;
  readonly group: MaterialGroup;
  readonly aliases: readonly string[];
  readonly ventilation: 'unventilated' | 'slightly' | 'ventilated';
}

export type Material = SolidMaterial | SheetMaterial | AirMaterial;

/** Where figures come from: each is told apart, so that one material may mix them. */
export const sources = {
  iso: { mark: 'MEMORY', source: 'ISO 10456:2007, table of design values' },
  isoRead: { mark: 'READ', source: 'ISO 10456:2007, table of design values, second-hand' },
  isoTimber: { mark: 'READ', source: 'ISO 10077-2 / EN 12524 table' },
  uk: { mark: 'MEMORY', source: 'BR 443 and CIBSE Guide A' },
  old: { mark: 'MEMORY', source: 'Approved Document L 2002, table of materials' },
  cibse: { mark: 'READ', source: 'CIBSE Guide A, Tables 3.36 and 3.37' },
  practice: { mark: 'PRACTICE', source: 'common in the trade; ask for the declared value' },
} as const satisfies Record<string, Source>;
type SourceName = keyof typeof sources;

/** [name, aliases, λ W/(mK), ρ kg/m³, c J/(kgK), μ dry, μ humid, and a source where it is not the usual one] */
export type SolidRow = readonly [
  name: string,
  aliases: string,
  conductivity: number,
  density: number,
  specificHeat: number,
  dry: number,
  humid: number,
  known?: Partial<Record<'conductivity' | 'density' | 'specificHeat' | 'vapour', SourceName>>,
];

/** Rows of a table to materials of a group; `usual` is where its figures come from unless the row says. */
export function solids(group: MaterialGroup, usual: SourceName, rows: readonly SolidRow[]): SolidMaterial[] {
  return rows.map(([name, aliases, conductivity, density, specificHeat, dry, humid, known = {}]) => ({
    kind: 'solid',
    name,
    group,
    aliases: aliasesOf(aliases),
    conductivity: { value: conductivity, ...sources[known.conductivity ?? usual] },
    density: { value: density, ...sources[known.density ?? usual] },
    specificHeat: { value: specificHeat, ...sources[known.specificHeat ?? usual] },
    vapour: { kind: 'factor', dry, humid, ...sources[known.vapour ?? usual] },
  }));
}

/** [name, aliases, sd m] */
export function sheets(
  group: MaterialGroup,
  usual: SourceName,
  rows: readonly (readonly [name: string, aliases: string, thickness: number])[],
): SheetMaterial[] {
  return rows.map(([name, aliases, thickness]) => ({
    kind: 'sheet',
    name,
    group,
    aliases: aliasesOf(aliases),
    vapour: { kind: 'thickness', thickness, ...sources[usual] },
  }));
}

export const aliasesOf = (text: string): string[] => (text === '' ? [] : text.split(', '));
