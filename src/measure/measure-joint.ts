import type { JointGive } from '../base/joint-give.js';
import type { Section } from '../model/frame-shape.js';
import { GRAVITY_N_PER_KG } from '../base/gravity.js';
import { mustBePositive } from '../fit/span.js';
import { combinedError, digits, type Reading } from './reading.js';

/** The two ways a test corner is loaded: in its plane, or at right angles to it. */
export const jointWays = ['plane', 'out'] as const;
export type JointWay = (typeof jointWays)[number];

/** A corner with one leg clamped down right up to the joint, and a weight hung on the other. */
export interface JointReading {
  readonly way: JointWay;
  readonly weight_g: number;
  /** From the inside edge of the clamped leg to the weight. */
  readonly arm_mm: number;
  /** How far the free leg moved at the weight, with the weight less without it. */
  readonly moves_mm: number;
  /** Reading errors, ±; taken from a ruler and a kitchen scale when not given. */
  readonly errors?: { readonly moves_mm?: number };
}

type Corner = Pick<Section, 'w_mm' | 'd_mm' | 'A_mm2' | 'I_plane_mm4' | 'I_out_mm4' | 'J_mm4' | 'E_MPa' | 'G_MPa'>;

const ordinaryErrors = { moves_mm: 0.25, weight_g: 20, arm_mm: 2 } as const;
/**
 * How far the stiffness of a board is off its kind's, as a share (`proposal`): measure it with a weight between two
 * blocks to do better.
 */
const stiffness_off = 0.1;
/** Strength of a glued mitre that is counted on (`proposal`, as on the default shelf). */
const usual_bond_MPa = 2;
/** Share of a rectangle that carries shear. */
const shear_share = 5 / 6;

type Load = Pick<JointReading, 'way' | 'weight_g' | 'arm_mm'>;

/**
 * Movement at the weight of a corner without give, and for each bar-width of give of the free leg's end and of the
 * clamped one's, mm. The free leg bends from the
 * inside edge on; the joint turns about the corner of the centre lines. In the plane both ends bend; at right angles
 * the clamped one twists.
 */
function movement(
  { way, weight_g, arm_mm }: Load,
  bar: Corner,
): { readonly wood_mm: number; readonly free_mm: number; readonly clamped_mm: number } {
  const F = (weight_g / 1000) * GRAVITY_N_PER_KG;
  const EI = bar.E_MPa * (way === 'plane' ? bar.I_plane_mm4 : bar.I_out_mm4);
  const lever = arm_mm + bar.w_mm / 2;
  const other = way === 'plane' ? EI : bar.G_MPa * bar.J_mm4;
  return {
    wood_mm: (F * arm_mm ** 3) / (3 * EI) + (F * arm_mm) / (shear_share * bar.G_MPa * bar.A_mm2),
    free_mm: (F * lever ** 2 * bar.w_mm) / EI,
    clamped_mm: (F * lever ** 2 * bar.w_mm) / other,
  };
}

/** How far the weight moves when both bar ends give as said, mm. */
export function jointMoves_mm(load: Load, bar: Corner, give: JointGive): number {
  const { wood_mm, free_mm, clamped_mm } = movement(load, bar);
  return (
    wood_mm +
    (load.way === 'plane' ? (free_mm + clamped_mm) * give.plane : free_mm * give.out + clamped_mm * give.twist)
  );
}

/**
 * Standard error of the movement that a give would make, mm: the reading, and wood that is not as stiff as its kind.
 */
export function jointError_mm(load: Load, bar: Corner, give: JointGive): number {
  return Math.hypot(ordinaryErrors.moves_mm, stiffness_off * jointMoves_mm(load, bar, give));
}

/**
 * Give of a test corner, in bar-widths, from how far its free leg moves: both bar ends yield alike; in the plane each
 * by bending, at right angles
 * the free leg by bending and the clamped one by twist. Never below 0. Throws RangeError for a number not above zero.
 */
export function measureJoint(reading: JointReading, bar: Corner): Reading {
  const { weight_g, arm_mm, moves_mm } = reading;
  mustBePositive({ weight: weight_g, arm: arm_mm, movement: moves_mm });
  const error_mm = reading.errors?.moves_mm ?? ordinaryErrors.moves_mm;
  const give = (load: Load, moved_mm: number, E_share = 1): number => {
    const { wood_mm, free_mm, clamped_mm } = movement(load, bar);
    return (moved_mm * E_share - wood_mm) / (free_mm + clamped_mm);
  };
  const value = give(reading, moves_mm);
  const off = combinedError(value, [
    give(reading, moves_mm + error_mm),
    give(reading, moves_mm, 1 + stiffness_off),
    give({ ...reading, weight_g: weight_g + ordinaryErrors.weight_g }, moves_mm),
    give({ ...reading, arm_mm: arm_mm + ordinaryErrors.arm_mm }, moves_mm),
  ]);
  const { wood_mm } = movement(reading, bar);
  return {
    words: `Of the ${digits(moves_mm)} mm the wood itself bends ${digits(wood_mm)} mm; what is left over, the joint gives: as much as ${digits(Math.max(0, value))} more bar-widths of bar at each end.`,
    value: Math.max(0, value),
    low: Math.max(0, value - off),
    high: Math.max(0, value + off),
    unit: 'bar-widths',
    paste: '',
    notes: notesFor(value, off, reading, error_mm, bar),
  };
}

function notesFor(
  value: number,
  off: number,
  { moves_mm, weight_g, arm_mm, way }: JointReading,
  error_mm: number,
  bar: Corner,
): readonly string[] {
  const notes: string[] = [];
  if (value <= 0)
    notes.push(
      'It moved less than the wood alone should bend: the board is stiffer than the shelf says, or the clamp held part of the free leg. Measure the board itself with sightdown measure sag.',
    );
  else if (off > value / 2)
    notes.push('The band is as wide as half the number: hang more on it, as long as nothing creaks.');
  const stress_MPa =
    ((weight_g / 1000) * GRAVITY_N_PER_KG * arm_mm) /
    ((way === 'plane' ? bar.d_mm * bar.w_mm ** 2 : bar.w_mm * bar.d_mm ** 2) / 6);
  if (stress_MPa > usual_bond_MPa)
    notes.push(
      `So much weight strains the glue to ${digits(stress_MPa, 2)} MPa, more than the ${usual_bond_MPa} MPa a glued mitre is counted on: it may open. Keep feet and fingers away.`,
    );
  if (moves_mm < 4 * error_mm)
    notes.push('The movement is little more than the reading error: hang more on it, as long as nothing creaks.');
  if (arm_mm < 3 * bar.w_mm)
    notes.push('The arm is shorter than three bar-widths: what the clamp presses into the wood counts as give.');
  if (way === 'out')
    notes.push(
      'Out of the plane the free leg bends and the clamped one twists at the joint: the number stands for both.',
    );
  return notes;
}
