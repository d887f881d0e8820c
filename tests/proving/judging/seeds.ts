/** Which seeds the methods may be tuned on, and which judge them. */
export const tuningSeeds = Array.from({ length: 28 }, (_, i) => 100 + i);
/** With the fifteen types more than 400 records of every tier. */
export const judgingSeeds = Array.from({ length: 28 }, (_, i) => 200 + i);
