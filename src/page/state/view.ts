import { signal } from '@preact/signals';
import type { ChangeSeen } from '../engine/protocol.js';

/** The parts of the page that take the place of the frame. */
export const views = ['Frame', 'Boards', 'Shelf', 'Limits', 'Class', 'Sheet'] as const;
export type View = (typeof views)[number];
export const view = signal<View>('Frame');

/** A change that is looked at before it is made, and the frame with it. */
export const lookedAt = signal<{ readonly change: ChangeSeen; readonly svg: string } | null>(null);
