/** The code of the error when what a house was to become rests on what it was, and that is no more. */
export const HOUSE_CHANGED = 'HOUSE_CHANGED';
