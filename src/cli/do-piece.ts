/** One piece of shared work, by its number; `step` is called when a step of it is done. */
export type DoPiece<Answer> = (piece: number, step: () => Promise<void> | void) => Promise<Answer>;
