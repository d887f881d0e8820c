/** How much of a framed face is timber, where nobody has counted it. */

/**
 * Share of the face that is timber [–], noggins, plates and doubled members included. BR 443 (2006 and 2019);
 * from memory, to be confirmed.
 */
export const timberConventions = {
  'timber-frame wall': 0.15,
  'ceiling joists': 0.09,
  rafters: 0.08,
  'floor joists': 0.12,
} as const;

export type Framing = keyof typeof timberConventions;

/**
 * What to propose beside members of this width and spacing [m] so that both come to the convention [–]; 0 where
 * the members alone come to more.
 */
export const proposedExtraFraction = (framing: Framing, width: number, spacing: number): number =>
  Math.max(0, timberConventions[framing] - width / spacing);
