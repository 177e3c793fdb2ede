import { appliedData } from '../findings/applied.js';
import { steady } from '../report/json.js';
import type { ClassFindings } from './class-findings.js';
import type { Pooled } from './pooled.js';

/**
 * The roll-up of a class as plain data: rows, what most got wrong, and what all take together. A value that cannot be
 * known is null.
 */
export function rollUpData(found: ClassFindings): Record<string, unknown> {
  const { roll_up, rows, others, pooled, pooled_rows, shares } = found;
  return {
    plans: roll_up.plans,
    broken_files: roll_up.broken,
    verdicts: roll_up.verdicts,
    rows: rows.map((row) => ({
      file: row.file,
      name: row.name,
      student: row.student,
      count: row.count,
      verdict: row.verdict,
      worst: row.findings[0] ?? null,
      lift_chance: row.lift_chance,
      cost: row.cost,
      points: row.points,
      marks: Object.fromEntries([...row.marks].map(([rule, { verdict, value }]) => [rule, { verdict, value }])),
    })),
    not_read: others.map(({ file, kind, why }) => ({ file, kind, why })),
    common: roll_up.common.map(({ rule, plans, stops, unknowns, cautions, rows: in_rows, example }) => ({
      rule,
      plans,
      stops,
      unknowns,
      cautions,
      rows: in_rows,
      example: example.say,
      do: example.do,
    })),
    ruleset: appliedData(found.applied),
    shelf: found.shelf_name,
    measured: found.measured,
    seed: found.seed,
    samples: found.samples,
    pooled_rows,
    shares,
    pooled: pooled === null ? null : pooledData(pooled),
  };
}

/** What several plans take together as plain data: boards with their pieces, the buying list, cloth and the rest. */
export function pooledData({
  cut,
  supplies,
  short,
  rolls,
  others,
  total_cost,
  reason,
}: Pooled): Record<string, unknown> {
  return {
    plans: cut.plan_names,
    currency: cut.currency,
    demo_prices: cut.demo_prices,
    total_cost,
    reason,
    boards_cost: supplies.full_boards_cost,
    boards: supplies.boards_to_buy,
    waste_share: cut.waste_share,
    proven: cut.proven,
    bound: supplies.boards_bound,
    buy: supplies.boards.map(({ stock, length_mm, price, count, on_hand, role, invented }) => ({
      stock,
      length_mm,
      price,
      count,
      on_hand,
      role,
      invented,
    })),
    order: supplies.short.length === 0 ? null : { proven: supplies.order_proven },
    cut: cut.stocks.flatMap(({ stock, boards }) =>
      boards.map((board, i) => ({
        stock,
        board: i + 1,
        mark: board.mark,
        length_mm: board.length_mm,
        left_mm: board.left_mm,
        pieces: board.pieces.map(({ tag, plan, copy, piece, from_mm, to_mm }) => ({
          tag,
          plan,
          copy,
          part: piece.about,
          ply: piece.ply,
          ends: piece.ends,
          cut_mm: piece.cut_mm,
          short_mm: piece.short_mm,
          from_mm,
          to_mm,
          later: piece.later,
        })),
      })),
    ),
    uncut: cut.uncut,
    short,
    too_long: cut.too_long.map(({ stock, piece, needs_mm, longest_mm, alternatives }) => ({
      stock,
      tag: piece.tag,
      plan: piece.plan,
      needs_mm,
      longest_mm,
      alternatives,
    })),
    rolls: rolls.map(({ cloth, layout, bought_mm, bought_cost }) => ({
      cloth: cloth.key,
      roll_mm: layout.roll_mm,
      length_mm: layout.length_mm,
      proven: layout.proven,
      least_mm: layout.least_mm,
      bought_mm,
      cost: bought_cost,
      placed: layout.placed,
      too_wide: layout.too_wide,
    })),
    others: others.map((line) => ({ what: line.name, quantity: line.for_all, ...line })),
  };
}

/** Data as JSON: numbers as in that of an audit. */
export function steadyJson(data: unknown): string {
  return JSON.stringify(data, steady, 2);
}
