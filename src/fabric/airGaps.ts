/** What open joints beside hand-cut insulation do: by the standard's levels, and by a simple model. */
import type { AirLayer, BuildUp } from './buildUp.ts';
import { noCorrections } from './corrections.ts';
import type { Surfaces } from './surfaces.ts';
import { transmittanceOf } from './transmittance.ts';

/** One open joint of this width every so far, through the whole depth of the insulation. */
export interface OpenJoints {
  /** [m] */
  readonly width: number;
  /** From joint to joint [m]. */
  readonly spacing: number;
}

export interface Fitting {
  /** The layer of insulation, by position. */
  readonly layer: number;
  /** Fitted without gaps, level 0 [W/(m²K)]. */
  readonly careful: number;
  /** Gaps that reach through the insulation, level 1; as `careful` where that is under 3 % [W/(m²K)]. */
  readonly gapsThrough: number;
  /** Gaps that let air circulate around the insulation, level 2; likewise [W/(m²K)]. */
  readonly airCirculates: number;
}

/** A simple model, not the standard's. */
export interface JointLoss {
  /** Of the face that is open joint [–]. */
  readonly share: number;
  /** With the joints [W/(m²K)]. */
  readonly transmittance: number;
}

/**
 * The clear width between members [m]: what a board between them is cut to.
 *
 * @param memberWidth [m]
 * @param spacing     from centre to centre [m]
 */
export function clearWidth(memberWidth: number, spacing: number): number {
  return spacing - memberWidth;
}

/**
 * A build-up fitted well and less well, by the correction levels; null where it has no layer that resists or
 * the method does not hold.
 *
 * @see ISO 6946:2017, Annex F
 */
export function fittingOf(buildUp: BuildUp, surfaces: Surfaces): Fitting | null {
  const byLevel = ([0, 1, 2] as const).map((airGapLevel) =>
    transmittanceOf(buildUp, surfaces, { ...noCorrections, airGapLevel }),
  );
  const { layer } = byLevel[0].corrections;
  const [careful, gapsThrough, airCirculates] = byLevel.map((it) => it.transmittance);
  if (layer === null || careful === null || gapsThrough === null || airCirculates === null) return null;
  return { layer, careful, gapsThrough, airCirculates };
}

/**
 * What wider joints do, as still air beside the insulation: the joint is one small air space from face to
 * face, and heat passes it in parallel. Air that moves through the joint makes it worse, so this is the least
 * that the joint does. Null where `fittingOf` is, or the layer states no thickness.
 *
 * @throws RangeError if the joints are wider than what lies between them
 */
export function jointLoss(buildUp: BuildUp, surfaces: Surfaces, joints: OpenJoints): JointLoss | null {
  const share = joints.width / joints.spacing;
  if (!(share >= 0 && share <= 1)) throw new RangeError('a joint is narrower than the spacing of the joints');
  const fitting = fittingOf(buildUp, surfaces);
  if (fitting === null) return null;
  const joint = jointThrough(buildUp, fitting.layer, joints.width);
  if (joint === null) return null;
  const { transmittance } = transmittanceOf(joint, surfaces);
  if (transmittance === null) return null;
  return { share, transmittance: (1 - share) * fitting.careful + share * transmittance };
}

/** The build-up within a joint: air where the insulation was. */
function jointThrough({ facing, layers }: BuildUp, at: number, width: number): BuildUp | null {
  const { name, thickness } = layers[at];
  if (thickness === null) return null;
  const air: AirLayer = {
    kind: 'air',
    name,
    thickness,
    ventilation: 'unventilated',
    opening: null,
    width,
    bridge: null,
  };
  return { facing, layers: layers.with(at, air) };
}
