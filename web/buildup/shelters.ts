/** How much wind a house gets. */
export const shelters = {
  sheltered: 'Sheltered, as in a town',
  average: 'Average',
  exposed: 'Exposed, as on a hill',
} as const;
