/** One of the editable numbers: the unit it is given in, and what it may sensibly be. */
interface ProposalNumber {
  readonly unit: string;
  readonly least: number;
  readonly most: number;
}

/** How long one person takes for one step of one frame. */
const minutes: ProposalNumber = { unit: 'min', least: 1, most: 480 };

/**
 * The editable numbers behind the sums, by name. What each stands for is written beside it on the shelf; outside its
 * range it would mean nothing, or hide a danger.
 */
export const proposalNumbers = {
  'accidental-pull': { unit: 'N/m', least: 100, most: 20_000 },
  'stiffness-share': { unit: 'ratio', least: 0.1, most: 1 },
  'second-give': { unit: 'ratio', least: 0, most: 1000 },
  'drying-factor': { unit: 'per-pct', least: 0, most: 1 },
  'pairing-opposed': { unit: 'ratio', least: -1, most: 0 },
  'pairing-matched': { unit: 'ratio', least: 0, most: 1 },
  'reading-error-twist': { unit: 'deg/m', least: 0.001, most: 10 },
  'reading-error-curve': { unit: '/m', least: 0.000_001, most: 0.1 },
  diffusion: { unit: 'm2/s', least: 1e-13, most: 1e-7 },
  'creep-class-1': { unit: 'ratio', least: 0, most: 10 },
  'creep-class-2': { unit: 'ratio', least: 0, most: 10 },
  'creep-class-3': { unit: 'ratio', least: 0, most: 10 },
  'push-force': { unit: 'N', least: 0.1, most: 1000 },
  'push-patch': { unit: 'mm', least: 1, most: 500 },
  'cloth-grip': { unit: 'mm', least: 0, most: 500 },
  'paint-mass': { unit: 'g/m2', least: 0, most: 50_000 },
  'blank-trim': { unit: 'mm', least: 0, most: 500 },
  'clamp-force': { unit: 'N', least: 50, most: 50_000 },
  'saw-height': { unit: 'mm', least: 10, most: 500 },
  'minutes-sort': minutes,
  'minutes-rough-cut': minutes,
  'minutes-plies': minutes,
  'minutes-edge': minutes,
  'minutes-trial': minutes,
  'minutes-cut': minutes,
  'minutes-dry-fit': minutes,
  'minutes-glue-corners': minutes,
  'minutes-nail-corners': minutes,
  'minutes-set-corners': minutes,
  'minutes-assemble-corners': minutes,
  'minutes-crossbars': minutes,
  'minutes-braces': minutes,
  'minutes-square': minutes,
  'minutes-threads': minutes,
  'minutes-stretch': minutes,
  'minutes-second-round': minutes,
  'minutes-corners': minutes,
  'minutes-trim': minutes,
  'minutes-keys': minutes,
  'minutes-ground': minutes,
  'hook-factor': { unit: 'ratio', least: 1, most: 100 },
  'wire-factor': { unit: 'ratio', least: 1, most: 100 },
} as const satisfies Readonly<Record<string, ProposalNumber>>;

/** The name of an editable number. */
export type ProposalName = keyof typeof proposalNumbers;
