// Stands in for what a report says of a bench sheet: the page reads none.
export const measuredSection = () => null;
