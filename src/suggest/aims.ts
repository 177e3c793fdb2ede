/** What a search may aim at. */
export const aims = ['cheapest', 'lightest', 'least-change'] as const;
export type Aim = (typeof aims)[number];
