import { sum } from "../number/sum";
import { found, type Outcome, refused } from "../outcome";

/** One error that several quantities may share: its signed effect (sensitivity × u) in the quantity's unit. */
export type SharedPart = { readonly key: string; readonly effect: number };

/** A quantity with its whole standard uncertainty and the parts of it that others may share. */
export type SharingQuantity = {
  readonly standardUncertainty: number;
  readonly parts: readonly SharedPart[];
};

/** Rounding of parts that make up a whole uncertainty. */
const ROUNDING = 1e-9;

/**
 * Correlation coefficient of two quantities from the errors they share, by key: r = Σ eᵢ·e′ᵢ/(u·u′) (JCGM 100:2008, F.1.2.3
 * and eq. 14). Signs matter: a meter's error acts on a reference's temperature and on a sensor's emf in opposite ways.
 * Pure number from −1 to 1.
 * Problems: `not-finite`; `not-applicable` for an uncertainty not above zero, or parts larger than the whole.
 */
export function sharedCorrelation(first: SharingQuantity, second: SharingQuantity): Outcome<number> {
  for (const { standardUncertainty: u, parts } of [first, second]) {
    const effects = parts.map(({ effect }) => effect);
    if (!Number.isFinite(u) || !effects.every(Number.isFinite)) {
      return refused("not-finite", "an uncertainty of a correlation is not a number");
    }
    if (!(u > 0)) return refused("not-applicable", "a quantity without uncertainty has no correlation");
    const shared = sum(effects.map((effect) => effect * effect));
    if (shared > u * u * (1 + ROUNDING)) {
      return refused("not-applicable", "what is shared is more than the whole uncertainty");
    }
  }
  const effects = new Map(second.parts.map(({ key, effect }) => [key, effect]));
  const covariance = sum(first.parts.map(({ key, effect }) => effect * (effects.get(key) ?? 0)));
  const r = covariance / (first.standardUncertainty * second.standardUncertainty);
  return found(Math.min(1, Math.max(-1, r)));
}

/**
 * Two references calibrated by one laboratory against one standard: r = u_shared²/(u₁·u₂) (JCGM 100:2008, F.1.2.3; r ≈ 1 is
 * why the mean of two does not halve their certificates' variance). All three in one unit. Problems: `sharedCorrelation`.
 */
export function sharedOriginCorrelation(shared: number, first: number, second: number): Outcome<number> {
  const parts = [{ key: "origin", effect: shared }];
  return sharedCorrelation({ standardUncertainty: first, parts }, { standardUncertainty: second, parts });
}

/** A quantity, its whole standard uncertainty, and how strongly a shared error acts on it (signed sensitivity). */
export type Exposed = { readonly standardUncertainty: number; readonly sensitivity: number };

/**
 * Two quantities measured through one voltmeter: r = c₁·c₂·u_meter²/(u₁·u₂), c in the quantity's unit per µV (1/S for a
 * temperature, 1 for an emf), u_meter in µV: JCGM 100:2008, 5.2.4 (one instrument used for both). Problems:
 * `sharedCorrelation`.
 */
export function sharedMeterCorrelation(microvolt: number, first: Exposed, second: Exposed): Outcome<number> {
  return exposedCorrelation(microvolt, first, second);
}

/**
 * Two quantities whose reference junctions share one thermometer: r = c₁·c₂·u_j²/(u₁·u₂), u_j in °C, c in the quantity's
 * unit per °C (S(t_j)/S(t) for a temperature, S(t_j) for an emf): JCGM 100:2008, 5.2.4. The spread over the block is each
 * channel's own and no part of it. Problems: `sharedCorrelation`.
 */
export function sharedJunctionCorrelation(celsius: number, first: Exposed, second: Exposed): Outcome<number> {
  return exposedCorrelation(celsius, first, second);
}

function exposedCorrelation(standard: number, first: Exposed, second: Exposed): Outcome<number> {
  const sharing = ({ standardUncertainty, sensitivity }: Exposed): SharingQuantity => ({
    standardUncertainty,
    parts: [{ key: "shared", effect: sensitivity * standard }],
  });
  return sharedCorrelation(sharing(first), sharing(second));
}
