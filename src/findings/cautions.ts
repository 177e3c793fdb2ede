/** A shop-safety caution: its id in rules, and what a report prints. */
export interface Caution {
  readonly id: string;
  readonly text: string;
}

/** Every caution a rule or a step of work may call up, in the order in which a report prints them. */
export const cautions: readonly Caution[] = [
  { id: 'eye-protection', text: 'Wear eye protection when you saw, drill, nail or staple.' },
  {
    id: 'saw-blade',
    text: 'Keep hands clear of the blade, let it stop before you reach for an offcut, and hold short pieces with a clamp, not with fingers.',
  },
  { id: 'dust', text: 'Sanding and sawing dust harms lungs: open a window, use a vacuum, wear a dust mask.' },
  { id: 'drill-slip', text: 'Clamp the work before drilling and keep the other hand out of the line of the bit.' },
  {
    id: 'clamp-fingers',
    text: 'Clamps, cords and heavy blanks pinch: tighten slowly and keep fingers out of the joint.',
  },
  { id: 'staple-gun', text: 'Never point a staple or nail gun at anyone; lock it when you put it down.' },
  {
    id: 'solvent',
    text: 'Glues, grounds and solvents need fresh air and no flame; oily rags dry flat outdoors or under water, never in a heap.',
  },
  { id: 'lifting', text: 'Lift with bent knees and a straight back; two people for anything wide, awkward or heavy.' },
  {
    id: 'overhead-hanging',
    text: 'Where a piece hangs over people or in public, follow local codes and ask a licensed professional about the wall, the fixings and the weight.',
  },
];

/** The same, by id. */
export const cautionsById: ReadonlyMap<string, Caution> = new Map(cautions.map((caution) => [caution.id, caution]));
