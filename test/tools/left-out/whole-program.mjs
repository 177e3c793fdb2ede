// Stands in the program for one audit for what more an audit can be, such as one of a class: the whole program starts, and does all that was asked. Nothing was said or written yet.
export function runMore() {
  __whole();
  return new Promise(() => undefined);
}
