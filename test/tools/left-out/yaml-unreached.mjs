// Stands in for what the page never asks of the YAML library: going through tokens, and reading with a reviver.
export function visit() {
  throw new Error('the page goes through no tokens');
}
export function applyReviver() {
  throw new Error('the page reads without a reviver');
}
