import { clampsFor } from '../mechanics/glue/clamping.js';
import { plyGlueLines } from '../mechanics/glue/glue-lines.js';
import { glueSheet } from '../mechanics/glue/glue-sheet.js';
import { orderOfWork, type WorkStep } from '../order-of-work/order-of-work.js';
import { CORNER_CLAMPS } from '../order-of-work/tools-at-hand.js';
import { buildModel } from '../model/build-model.js';
import type { Model } from '../model/model.js';
import type { Plan } from '../plan/plan.js';
import { shelfNumber } from '../shelf/shelf-number.js';
import type { Shelf } from '../shelf/shelf.js';
import type { Shop } from '../shop/shop.js';
import { toolsAtHand } from '../shop/tools-at-hand.js';
import type { Job, Resource, Task } from './job.js';
import { stepTable, type StepNeeds } from './task-table.js';

const minutesOf = (hours: number | null): number => Math.ceil((hours ?? 0) * 60 - 1e-6);

/**
 * The frames of plans, each with its tasks and waits as its order of work has them; `count: 3` is three frames. No two
 * have one name.
 */
export function jobsOf(plans: readonly Plan[], shop: Shop, shelf: Shelf): readonly Job[] {
  return plans.flatMap((plan, p) => {
    const tasks = tasksOf(buildModel(plan, shelf), shop);
    const name = plans.some((other) => other !== plan && other.name === plan.name)
      ? `${plan.name} (plan ${p + 1}${plan.student === null ? '' : `, ${plan.student}`})`
      : plan.name;
    return Array.from({ length: plan.count }, (_, i): Job => ({
      plan,
      name: plan.count > 1 ? `${name}, frame ${i + 1}` : name,
      student: plan.student,
      tasks,
    }));
  });
}

/** The tasks of one frame up to the last coat of ground; steps that only wait lengthen the wait before them. */
export function tasksOf(model: Model, shop: Shop): readonly Task[] {
  const tasks: Task[] = [];
  for (const step of orderOfWork(model, toolsAtHand(shop))) {
    const needs = stepTable[step.id];
    const last = tasks.at(-1);
    if (needs !== undefined) tasks.push(...split(step, needs, model, shop));
    else if (last !== undefined && (step.wait_h ?? 0) > 0)
      tasks[tasks.length - 1] = {
        ...last,
        wait_min: last.wait_min + minutesOf(step.wait_h),
        wait_for: last.wait_for === '' ? step.wait_for : last.wait_for,
      };
  }
  return tasks;
}

/** The goes that a step takes: a coat each, or as many corners or bars as the clamps hold at once. */
function split(step: WorkStep, needs: StepNeeds, model: Model, shop: Shop): readonly Task[] {
  const minutes = shelfNumber(model.shelf, needs.minutes);
  const wait_min = minutesOf(step.wait_h);
  const rounds =
    needs.clamps === undefined
      ? step.id === 'ground'
        ? Array.from({ length: model.plan.ground.coats }, () => 0)
        : [0]
      : clampRounds(needs.clamps, model, shop);
  const clamp_min = Math.ceil(glueSheet(model)?.clamp_min ?? 0);
  const dry = step.id === 'ground' ? Math.ceil(wait_min / rounds.length) : wait_min;
  return rounds.map((clamps, i): Task => {
    const several = rounds.length > 1;
    const last = i === rounds.length - 1;
    const glued = needs.clamps !== undefined && wait_min > 0;
    return {
      id: several ? `${step.id}-${i + 1}` : step.id,
      words: several
        ? `${needs.words}, ${step.id === 'ground' ? `coat ${i + 1} of ${rounds.length}` : `${i + 1} of ${rounds.length}`}`
        : needs.words,
      stage: needs.stage,
      minutes: step.id === 'ground' ? minutes : Math.ceil(minutes / rounds.length),
      uses: usesOf(needs, clamps, shop),
      hold_min: glued ? clamp_min : 0,
      wait_min: last || step.id === 'ground' ? dry : Math.min(clamp_min, wait_min),
      wait_for: step.wait_for,
    };
  });
}

function usesOf(needs: StepNeeds, clamps: number, shop: Shop): Task['uses'] {
  const uses: Partial<Record<Resource, number>> = { person: 1 };
  if (needs.saw && !(shop.saws ?? []).some(({ kind }) => kind === 'none')) uses.saw = 1;
  if (needs.flat && shop.flat_places !== 0) uses['flat place'] = 1;
  if (clamps > 0) uses[needs.clamps === 'bar' ? 'bar clamp' : 'corner clamp'] = clamps;
  return uses;
}

/** Clamps of each go; fewer than one piece asks for are all used on it, and none means cords or weights. */
function clampRounds(kind: 'corner' | 'bar', model: Model, shop: Shop): readonly number[] {
  const have = (kind === 'corner' ? shop.corner_clamps : shop.bar_clamps) ?? Infinity;
  const pieces =
    kind === 'corner'
      ? Array.from({ length: CORNER_CLAMPS }, () => 1)
      : plyGlueLines(model).map(({ length_mm }) => clampsFor(length_mm));
  if (have === 0) return [0];
  const rounds: number[] = [];
  for (const piece of pieces) {
    const open = rounds.at(-1);
    if (open !== undefined && open + piece <= have) rounds[rounds.length - 1] = open + piece;
    else rounds.push(Math.min(piece, have));
  }
  return rounds.length === 0 ? [0] : rounds;
}
