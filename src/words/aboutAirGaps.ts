/** What careful fitting is worth, in the words of the trade. */
import type { Fitting, JointLoss, OpenJoints } from '../fabric/airGaps.ts';
import { percent, transmittance } from './figures.ts';

const millimetres = (length: number) => `${Math.round(length * 1000)} mm`;
const more = (worse: number, careful: number) => percent(worse / careful - 1);

/** "Cut to 404 mm: timbers 46 mm wide at 450 mm centres." */
export const cutTo = (clear: number, memberWidth: number, spacing: number) =>
  `Cut to ${millimetres(clear)}: timbers ${millimetres(memberWidth)} wide at ${millimetres(spacing)} centres.`;

/** One sentence per way of fitting, best first. */
export function sayFitting({ careful, gapsThrough, airCirculates }: Fitting): string[] {
  return [
    `Fitted tight, with no gaps at the timbers: ${transmittance(careful)}.`,
    gapsThrough === careful
      ? 'A few gaps that reach through the insulation add less than 3 %, which ISO 6946 leaves out.'
      : `Gaps that reach through the insulation: ${transmittance(gapsThrough)}, ${more(gapsThrough, careful)} more heat lost.`,
    airCirculates === careful
      ? 'Even gaps that let air move around the insulation add less than 3 % here.'
      : `Gaps that let air move around the insulation: ${transmittance(airCirculates)}, ${more(airCirculates, careful)} more heat lost.`,
  ];
}

export function sayJoints(joints: OpenJoints, loss: JointLoss, { careful }: Fitting): string {
  return `Open joints of ${millimetres(joints.width)} every ${millimetres(joints.spacing)}: at least ${transmittance(loss.transmittance)}, ${more(loss.transmittance, careful)} more heat lost. A simple model: still air in the joint; a draught through it is worse.`;
}
