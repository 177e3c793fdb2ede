/** Works a value out when it is first asked for, and keeps it; what it was made from is let go then. */
export function once<T>(work: () => T): () => T {
  let open: (() => T) | null = work;
  let kept: T;
  return () => {
    if (open !== null) {
      kept = open();
      open = null;
    }
    return kept;
  };
}
