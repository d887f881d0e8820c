/** What the terms of the trade mean, in words for a homeowner. */
export const glossary = {
  'heat loss':
    'The watts it takes to keep the house one degree warmer than outdoors. Twice the watts, twice the heating.',
  'time constant':
    'The hours in which an unheated house loses about two thirds of its warmth over outdoors. Longer is better.',
  'U-value':
    'The watts that pass through one square metre of a wall, roof or window for each degree between inside and outside.',
  interval:
    'The measurement cannot tell more closely than this: in 95 of 100 such tests the true figure lies within the interval.',
  'as drawn':
    'Worked out from the design: the layers or U-values, the areas, the bridges and the ventilation.',
  'as tested': 'The design with vents shut and fans off, as the house stood during the test.',
  'thermal bridges':
    'Corners, edges and junctions where more heat passes than through the plain wall or roof beside them.',
  ventilation: 'The heat that leaves with the air: through vents, fans and leaks.',
  stage: 'A span of days in which the house stood as it was: before a change, or after it.',
  'heat capacity': 'The heat that the house itself stores for each degree that it warms.',
} as const;
export type GlossaryTerm = keyof typeof glossary;
