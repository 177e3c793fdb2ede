// Stands in for a copy of what every browser that the page is made for has itself.
export default structuredClone;
