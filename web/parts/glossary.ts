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
  gap: 'What the house was measured to lose beyond what its design says it should.',
  allowance: 'How far above the design a measurement may lie and still count as built as drawn.',
  K: 'Kelvin: a degree, as on a Celsius thermometer, where differences are meant. 1.2 K less is 1.2 degrees less.',
  network:
    'A reckoned copy of the house as drawn, layer by layer. It is led through the same nights, and its insulation and leakage are changed until it cools as the real one did.',
  'W/K': 'Watts for each degree (kelvin) that it is warmer inside than outside.',
  leakage: 'Air that gets in and out through joints and cracks that nobody drew.',
  fabric: 'What the shell is made of: walls, roof, floor, windows and doors, with their junctions.',
  'mean U-value':
    'One U-value for the whole shell: what passes through fabric and junctions, shared over all of its area.',
  'surface logger':
    'A logger on the inner face of a wall, roof or floor. With the air on both sides it tells the U-value of that spot.',
  'temperature factor':
    'Where a surface or a space stands between outdoors (0) and the air of the house (1). Nearer to 1 is warmer.',
  'chance to decide':
    'How likely it is that the test, once made, would show whether the house performs as drawn.',
  'air changes': 'How often in an hour all of the air in the house is replaced.',
  'relative humidity': 'How much of the water that the air could hold at its temperature it does hold.',
  'absolute humidity': 'The grams of water in a cubic metre of air, whatever its temperature.',
  'dew point': 'What is colder than this grows wet in the air.',
  'degree days':
    'How cold a place is over a year: each day adds the degrees by which it is colder than the base temperature.',
} as const;
export type GlossaryTerm = keyof typeof glossary;
