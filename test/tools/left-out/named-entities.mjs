// Stands in for the lists of named entities in the page: its writers use numbers, as the command's do.
export const characterEntitiesHtml4 = {};
export const characterEntitiesLegacy = [];
