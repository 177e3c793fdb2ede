/** Faults that change nothing anybody could see, each with the reason: `was` and `becomes` on one line, as the command prints them. */
export const equalFaults = [];
