/** Values in a build-up that look like a slip of unit or place, each with what was likely meant. */
import type { DesignElement } from '../house.ts';
import type { BuildUp, BuildUpLayer, LayerBridge } from './buildUp.ts';
import type { FabricFinding } from './finding.ts';
import { leastOfMetals } from './refusals.ts';

/** Below this a solid conducts less than any insulation in a vacuum [W/(mK)]. */
const leastConductivity = 0.003;
/** Lighter than this is metal only by a slip [kg/m³]: aluminium has 2700. */
const lightestMetal = 2500;
/** Metal comes in sheets; a thicker layer of unknown density is none [m]. */
const thickestSheet = 0.01;
/** No solid in a building stores less [J/(kgK)], but for heavy metals. */
const leastSpecificHeat = 300;
/** The lightest of building materials [kg/m³]. */
const leastDensity = 5;
/** Thinner than this is a membrane or a foil, or metres taken for millimetres [m]. */
const membrane = 0.001;
/** Membranes conduct like plastic or bitumen [W/(mK)], foils like metal; neither like what lies between. */
const membranes = { from: 0.1, to: 0.6 } as const;
/** Thinner than any membrane [m]. */
const thinnestMembrane = 0.05e-3;

/** Keys count from the build-up: `layers[1]`. */
export function doubtsAbout({ layers }: BuildUp): FabricFinding[] {
  return layers.flatMap((layer, i) => {
    const key = `layers[${i}]`;
    return [
      ...thicknessDoubts(layer, key),
      ...(layer.kind === 'solid' ? conductivityDoubts(layer, key, layer.thickness) : []),
      ...(layer.kind === 'air' ? [] : massDoubts(layer, key)),
      ...(layer.bridge === null ? [] : bridgeDoubts(layer.bridge, `${key}.bridge`)),
    ];
  });
}

const bridgeDoubts = (bridge: LayerBridge, key: string): FabricFinding[] => [
  ...conductivityDoubts(bridge, key, 0),
  ...massDoubts(bridge, key),
];

/** 0.14 mm of insulation, of framing or of air was likely 0.14 m. */
function thicknessDoubts(layer: BuildUpLayer, key: string): FabricFinding[] {
  const { thickness } = layer;
  if (thickness === null || thickness >= membrane || thickness <= 0) return [];
  const likelyMembrane =
    layer.kind === 'stated' ||
    (layer.kind === 'solid' &&
      layer.bridge === null &&
      (layer.conductivity >= leastOfMetals ||
        (thickness >= thinnestMembrane &&
          layer.conductivity >= membranes.from &&
          layer.conductivity <= membranes.to)));
  if (likelyMembrane) return [];
  return [
    { code: 'thickness-doubtful', thickness, likely: thickness * 1000, where: { key: `${key}.thicknessMm` } },
  ];
}

/** Shorter than this was likely meant in metres [mm]; each stands far below what is built. PRACTICE. */
const leastLengths = { wall: 20, reach: 20, strip: 1, underfloor: 10, member: 2, centres: 10 } as const;

/** Lengths beside the layers' own thicknesses that look like metres. Keys count from the element. */
export function doubtsAboutLengths(entry: DesignElement): FabricFinding[] {
  const { wallThicknessMm, edgeInsulation: edge, underfloor, buildUp } = entry;
  return [
    ...lengthDoubts(wallThicknessMm, leastLengths.wall, 'wallThicknessMm'),
    ...lengthDoubts(edge?.reachMm, leastLengths.reach, 'edgeInsulation.reachMm'),
    ...lengthDoubts(edge?.thicknessMm, leastLengths.strip, 'edgeInsulation.thicknessMm'),
    ...lengthDoubts(underfloor?.heightMm, leastLengths.underfloor, 'underfloor.heightMm'),
    ...(buildUp?.layers ?? []).flatMap(({ bridge }, i) => {
      // Members of sheet metal are that slim.
      if (bridge === undefined || bridge.conductivityWmK >= leastOfMetals) return [];
      const key = `buildUp.layers[${i}].bridge`;
      return [
        ...lengthDoubts(bridge.widthMm, leastLengths.member, `${key}.widthMm`),
        ...lengthDoubts(bridge.spacingMm, leastLengths.centres, `${key}.spacingMm`),
      ];
    }),
  ];
}

/** A floor may well lie at no height at all. */
function lengthDoubts(millimetres: number | undefined, least: number, key: string): FabricFinding[] {
  if (millimetres === undefined || millimetres === 0 || millimetres >= least) return [];
  return [{ code: 'thickness-doubtful', thickness: millimetres / 1000, likely: millimetres, where: { key } }];
}

interface Conducting {
  readonly conductivity: number;
  readonly density: number | null;
}

/** 22 for something that is no metal was likely 22 mW/(mK); 0.000022 likely kW/(mK). */
function conductivityDoubts(
  { conductivity, density }: Conducting,
  key: string,
  thickness: number,
): FabricFinding[] {
  const where = { key: `${key}.conductivityWmK` };
  if (conductivity < leastConductivity)
    return [{ code: 'conductivity-doubtful', conductivity, likely: conductivity * 1000, where }];
  const metal = density === null ? thickness <= thickestSheet : density >= lightestMetal;
  if (conductivity < leastOfMetals || metal) return [];
  return [{ code: 'conductivity-doubtful', conductivity, likely: conductivity / 1000, where }];
}

interface Massive {
  readonly density: number | null;
  readonly specificHeat: number | null;
}

/** Density and specific heat changed over, kJ for J, or g/cm³ for kg/m³. */
function massDoubts({ density, specificHeat }: Massive, key: string): FabricFinding[] {
  const doubts: FabricFinding[] = [];
  const kilojoules = specificHeat !== null && specificHeat < leastDensity;
  const heavyMetal = density !== null && density > 7000;
  const low = specificHeat !== null && specificHeat < leastSpecificHeat && !heavyMetal;
  if (low && !kilojoules && density !== null && density >= leastSpecificHeat)
    return [{ code: 'mass-changed-over', density, specificHeat, where: { key: `${key}.densityKgM3` } }];
  if (kilojoules) {
    const where = { key: `${key}.specificHeatJkgK` };
    doubts.push({ code: 'specific-heat-doubtful', specificHeat, likely: specificHeat * 1000, where });
  }
  if (density !== null && density < leastDensity) {
    const where = { key: `${key}.densityKgM3` };
    doubts.push({ code: 'density-doubtful', density, likely: density * 1000, where });
  }
  return doubts;
}
