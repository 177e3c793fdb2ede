import { clearances } from '../mechanics/cloth/clearance.js';
import { clothCutSize, rollShort_mm } from '../mechanics/cloth/cut-size.js';
import { clothCutOf, padOn, pushTest, rollWidth_mm } from '../mechanics/cloth/cloth-sheet.js';
import { pushSpan, tapSpan } from '../mechanics/cloth/frame-spans.js';
import { keyLimit } from '../mechanics/cloth/key-limit.js';
import { pushSag_mm } from '../mechanics/cloth/push-test.js';
import { relaxShare } from '../mechanics/cloth/relaxation.js';
import { seasonalSwing } from '../mechanics/cloth/seasonal-pull.js';
import { clothOf } from '../mechanics/cloth/shelf-numbers.js';
import { tapBand } from '../mechanics/cloth/tap-note.js';
import { staplesBySteel } from '../mechanics/occupancy/staple-line.js';
import type { Model, Solution } from '../model/model.js';
import type { Fact, FactUnit } from './fact.js';

/** Facts about the cloth: its size and roll, its staples, its pull and how to read it, what changes it later. The note is that of the bare cloth. */
export function clothFacts(model: Model, solution: Solution): Fact[] {
  return [...sizeFacts(model), ...fixingFacts(model), ...pullFacts(model), ...laterFacts(model, solution)];
}

function sizeFacts(model: Model): Fact[] {
  const size = clothCutSize(clothCutOf(model));
  return [
    fact('cloth.cut_width_mm', size.width_mm, 'mm'),
    fact('cloth.cut_height_mm', size.height_mm, 'mm'),
    fact('cloth.roll_short_mm', rollShort_mm(size.width_mm, size.height_mm, rollWidth_mm(model)), 'mm'),
  ];
}

function fixingFacts(model: Model): Fact[] {
  const { fixing, peak } = model.plan.cloth;
  return [
    fact('cloth.overlap_mm', fixing.turn_mm, 'mm'),
    fact('cloth.staple_spacing_mm', fixing.every_mm, 'mm'),
    fact('cloth.staples_on_steel_count', staplesBySteel(model)?.on_steel ?? 0, 'count'),
    fact('cloth.staple_load_N', (Math.max(peak.x_N_per_m, peak.y_N_per_m) * fixing.every_mm) / 1000, 'N'),
  ];
}

function pullFacts(model: Model): Fact[] {
  const { working } = model.plan.cloth;
  const note = tapBand(tapSpan(model), working, clothOf(model).mass_g_per_m2 / 1000);
  return [
    fact('cloth.pull_low_N_per_m', Math.min(working.x_N_per_m, working.y_N_per_m), 'N/m'),
    fact('cloth.pull_high_N_per_m', Math.max(working.x_N_per_m, working.y_N_per_m), 'N/m'),
    fact('cloth.tap_note_low_Hz', note.low_Hz, 'Hz'),
    fact('cloth.tap_note_high_Hz', note.high_Hz, 'Hz'),
    fact('cloth.push_sag_mm', pushSag_mm(pushSpan(model), working, pushTest.weight_g, padOn(model)), 'mm'),
    fact('cloth.clearance_mm', Math.min(...clearances(model).map((c) => c.left_mm)), 'mm'),
  ];
}

function laterFacts(model: Model, solution: Solution): Fact[] {
  const { room } = model.plan;
  const swing = seasonalSwing(clothOf(model).stiffness_N_per_m, room.humidity_low, room.humidity_high);
  return [
    fact('cloth.relax_share', relaxShare(model, solution), 'share'),
    fact('cloth.key_travel_mm', keyLimit(model).travel_mm, 'mm'),
    fact('cloth.seasonal_swing_N_per_m', swing.value_N_per_m, 'N/m'),
  ];
}

function fact(path: string, value: number, unit: FactUnit): Fact {
  return { path, about: 'cloth', value, unit };
}
