/** What a search may aim at. */
export const aims = ['cheapest', 'lightest', 'least-change'] as const;
/** One of the aims. */
export type Aim = (typeof aims)[number];
