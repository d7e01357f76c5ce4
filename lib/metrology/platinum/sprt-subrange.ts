import { type FixedPoint, fixedPointKelvin } from "./fixed-point";

/**
 * One subrange of the ITS-90 for the standard platinum resistance thermometer: H. Preston-Thomas, Metrologia
 * 27 (1990) 3,
 * sections 3.3.1.3 to 3.3.3. Its deviation function is ΔW = (W − 1)·[a + b·x + c·x²] + d·[W − W(Al)]², x = W
 * − 1 or, in 3.3.1.3, ln W; the term in d above the aluminium point only.
 * Of 3.3.1 only the subrange from the argon point up is here; the ones below need gas and vapour-pressure
 * points.
 */
export type SprtSubrange = {
  readonly section: string;
  readonly fromKelvin: number;
  readonly toKelvin: number;
  /** In ascending order; as many as there are of a, b, c. */
  readonly points: readonly FixedPoint[];
  readonly variable: "ratio-minus-one" | "logarithm";
  /** Whether d is found at the silver point. */
  readonly hasSilver: boolean;
};

/**
 * Beyond the ends of a subrange by no more than this counts as at the end: the rounding of a temperature at a
 * fixed point.
 */
export const SUBRANGE_END_KELVIN = 1e-6;

const { Ar, Hg, Ga, In, Sn, Zn, Al, Ag } = fixedPointKelvin;
const plain = { variable: "ratio-minus-one", hasSilver: false } as const;

/** The subranges by their section in the text of the ITS-90. */
export const sprtSubranges = {
  "3.3.1.3": {
    section: "3.3.1.3",
    fromKelvin: Ar,
    toKelvin: 273.16,
    points: ["Ar", "Hg"],
    variable: "logarithm",
    hasSilver: false,
  },
  "3.3.2": {
    section: "3.3.2",
    fromKelvin: 273.15,
    toKelvin: Ag,
    points: ["Sn", "Zn", "Al"],
    variable: "ratio-minus-one",
    hasSilver: true,
  },
  "3.3.2.1": { section: "3.3.2.1", fromKelvin: 273.15, toKelvin: Al, points: ["Sn", "Zn", "Al"], ...plain },
  "3.3.2.2": { section: "3.3.2.2", fromKelvin: 273.15, toKelvin: Zn, points: ["Sn", "Zn"], ...plain },
  "3.3.2.3": { section: "3.3.2.3", fromKelvin: 273.15, toKelvin: Sn, points: ["In", "Sn"], ...plain },
  "3.3.2.4": { section: "3.3.2.4", fromKelvin: 273.15, toKelvin: In, points: ["In"], ...plain },
  "3.3.2.5": { section: "3.3.2.5", fromKelvin: 273.15, toKelvin: Ga, points: ["Ga"], ...plain },
  "3.3.3": { section: "3.3.3", fromKelvin: Hg, toKelvin: Ga, points: ["Hg", "Ga"], ...plain },
} as const satisfies Record<string, SprtSubrange>;

export type SprtSection = keyof typeof sprtSubranges;
