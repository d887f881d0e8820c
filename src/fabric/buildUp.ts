/** A build-up in SI: what `fromHouse.ts` makes of the layers in `house.json`. */
import type { HeatFlow } from '../house.ts';

interface Mass {
  /** [kg/m³] */
  readonly density: number | null;
  /** [J/(kgK)] */
  readonly specificHeat: number | null;
}

/** Members that run through a layer: studs, rafters, mortar joints. */
export interface LayerBridge extends Mass {
  readonly name: string;
  /** Share of the face [–, 0 to 1]. */
  readonly fraction: number;
  /** [W/(mK)] */
  readonly conductivity: number;
  /** Whether these are the members of the bridged layer before it (further inside), and not others. */
  readonly continues?: boolean;
}

export interface SolidLayer extends Mass {
  readonly kind: 'solid';
  readonly name: string;
  /** [m] */
  readonly thickness: number;
  /** [W/(mK)] */
  readonly conductivity: number;
  readonly bridge: LayerBridge | null;
}

/** A layer whose resistance is given outright. */
export interface StatedLayer extends Mass {
  readonly kind: 'stated';
  readonly name: string;
  /** [m²K/W] */
  readonly resistance: number;
  /** [m]; needed only for a bridge, fasteners or mass */
  readonly thickness: number | null;
  readonly bridge: LayerBridge | null;
}

export interface AirLayer {
  readonly kind: 'air';
  readonly name: string;
  /** [m] */
  readonly thickness: number;
  readonly ventilation: 'unventilated' | 'slightly' | 'ventilated';
  /** Openings per length (upright) or per area (lying) [m² per m or m²]. */
  readonly opening: number | null;
  /** Of a small or divided space, across the flow of heat [m]; wide where left out. */
  readonly width?: number;
  /** Of its brighter face [–]; that of any usual building material where left out. */
  readonly emissivity?: number;
  readonly bridge: LayerBridge | null;
}

export type BuildUpLayer = SolidLayer | StatedLayer | AirLayer;

export interface BuildUp {
  /** The way heat flows. */
  readonly facing: HeatFlow;
  /** From inside to outside. */
  readonly layers: readonly BuildUpLayer[];
}
