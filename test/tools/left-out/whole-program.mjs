// Stands in the program for one audit for what only a class needs: the whole program starts, and does all that was asked. Nothing was said or written yet.
export function runClass() {
  __whole();
  return new Promise(() => undefined);
}
