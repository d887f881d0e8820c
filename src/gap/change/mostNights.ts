/** Two months: what a heating season has of one kind of weather. PRACTICE. */
export const mostNights = 60;
