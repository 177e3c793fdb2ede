/**
 * What every page says of its maker, where a reader does not see it: a page that says so may be written over by the
 * next run.
 */
export const madeBy = 'made by sightdown';
