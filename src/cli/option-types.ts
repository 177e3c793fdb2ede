import type { Choosing, UnitSystem } from '../base/names.js';
import type { Aim } from '../suggest/aims.js';

// What commander hands to each command: they stand here, so that a command and the half of it that is loaded when it
// runs need not import each other.

/** Options of `audit` as commander gives them. */
export interface AuditOptions {
  readonly rules?: string;
  readonly shelf?: string;
  readonly out?: string;
  readonly measured?: string;
  readonly pile?: string;
  readonly shop?: string;
  readonly format: 'md' | 'json' | 'html' | 'csv';
  readonly names: 'shown' | 'hidden';
  readonly strict: boolean;
  /** How many share the work; left out, as many as there are cores. */
  readonly jobs?: number;
  readonly overwrite: boolean;
  readonly seed: number;
  readonly samples: number;
}

/** Options of `chart` as commander gives them. */
export interface ChartOptions {
  readonly rules?: string;
  readonly shelf?: string;
  readonly out: string;
  readonly jobs?: number;
  readonly overwrite: boolean;
  readonly units: UnitSystem;
  readonly seed: number;
  readonly samples: number;
}

/** Options of `cut` as commander gives them. */
export interface CutOptions {
  readonly shelf?: string;
  readonly pile?: string;
  /** Your workshop: what saws there are. */
  readonly shop?: string;
  readonly rules?: string;
  /** Cut plans as well that the rules stop. */
  readonly evenSo: boolean;
  readonly out?: string;
  readonly format: 'md' | 'csv' | 'json' | 'html';
  readonly list: 'both' | 'cut' | 'buy';
  readonly overwrite: boolean;
  /** Left out: the search counts its work instead of time. */
  readonly seconds?: number;
}

/** Options of `learn`. */
export interface LearnOptions {
  readonly shelf?: string;
  readonly pile?: string;
  readonly write: boolean;
  readonly out?: string;
  readonly date?: string;
  readonly format: 'md' | 'json' | 'html';
  readonly overwrite: boolean;
}

/** Options of `place` as commander gives them. */
export interface PlaceOptions {
  readonly pile: string;
  readonly rules?: string;
  readonly shelf?: string;
  readonly out?: string;
  readonly format: 'md' | 'json' | 'html';
  readonly write: boolean;
  readonly seed: number;
  readonly overwrite: boolean;
}

/** Options of `page` as commander gives them. */
export interface PageOptions {
  readonly shelf?: string;
  readonly rules?: string;
  readonly plan?: string;
  readonly out: string;
  readonly overwrite: boolean;
}

/** Options of `rules compare`. */
export interface CompareOptions {
  readonly shelf?: string;
  readonly seed: number;
  readonly samples: number;
}

/** Options of `suggest` as commander gives them. */
export interface SuggestOptions {
  readonly rules?: string;
  readonly shelf?: string;
  readonly clear: boolean;
  readonly verbose: boolean;
  readonly write?: string;
  readonly pick: Aim;
  readonly format: 'text' | 'json';
  readonly seed: number;
  readonly samples: number;
}

/** Flags of `new`; what is missing is asked for on a terminal. */
export interface NewOptions {
  readonly name?: string;
  readonly width?: string;
  readonly height?: string;
  readonly stock?: string;
  readonly lay?: 'flat' | 'edge';
  readonly plies?: number;
  readonly crossbar?: 'none' | 'upright' | 'level';
  readonly chosen?: 'unsorted' | 'plain' | 'picked';
  readonly moisture?: string;
  readonly hang?: 'wire' | 'two-hooks' | 'none';
  readonly out?: string;
  readonly shelf?: string;
  /** Write the boards in hand instead of a plan; the flags from here on are theirs alone. */
  readonly pile?: boolean;
  readonly mark?: string[];
  readonly length?: string[];
  readonly rise?: string[];
  readonly high?: string[];
  readonly sticks?: string;
  readonly over?: string;
  readonly bow?: string[];
  readonly crook?: string[];
  readonly unread?: number;
}

/** Options that every kind of reading shares. */
export interface CommonOptions {
  readonly error?: string;
  readonly date?: string;
  readonly shelf?: string;
}

/** Options of `measure sag`. */
export interface SagOptions extends CommonOptions {
  readonly stock?: string;
  readonly size?: string;
  readonly lies: 'flat' | 'edge';
  readonly span?: string;
  readonly weight?: string;
  readonly sag?: string[];
}

/** Options of `measure twist`. */
export interface TwistOptions extends CommonOptions {
  readonly rise?: string[];
  readonly width?: string;
  readonly length?: string;
  readonly hand: 'right' | 'left';
  readonly for?: string[];
  readonly ply: string;
  readonly stock?: string;
  readonly size?: string;
  readonly chosen: Choosing;
}

/** Options of `measure spread`. */
export interface SpreadOptions extends CommonOptions {
  readonly stock?: string;
  readonly size?: string;
  readonly chosen: Choosing;
  readonly twist?: string[];
  readonly bow?: string[];
  readonly crook?: string[];
  readonly over?: string;
}

/** Options of `measure joint`. */
export interface JointOptions extends CommonOptions {
  readonly stock?: string;
  readonly size?: string;
  readonly lies: 'flat' | 'edge';
  readonly way: 'plane' | 'out';
  readonly weight?: string;
  readonly arm?: string;
  readonly movement?: string[];
  readonly out?: string;
  readonly overwrite: boolean;
}

/** Options of `measure tap`. */
export interface TapOptions extends CommonOptions {
  readonly width?: string;
  readonly height?: string;
  readonly mass?: string;
  readonly plan?: string;
  readonly bare: boolean;
  readonly note?: string[];
}

/** Options of `measure push`. */
export interface PushOptions extends CommonOptions {
  readonly width?: string;
  readonly height?: string;
  readonly plan?: string;
  readonly weight?: string;
  readonly pad?: string;
  readonly sag?: string[];
  readonly stiffness?: string;
}

/** Options of `timetable` as commander gives them. */
export interface TimetableOptions {
  readonly shop: string;
  readonly shelf?: string;
  readonly out?: string;
  readonly format: 'md' | 'json' | 'html';
  readonly overwrite: boolean;
}
