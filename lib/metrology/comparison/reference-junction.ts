import { SQRT_3 } from "../number/constants";
import { found, type Outcome, refused } from "../outcome";
import { emf } from "../thermocouple/emf";
import type { ReferenceFunction } from "../thermocouple/reference-function";
import { seebeck } from "../thermocouple/seebeck";

/**
 * One channel's reference junction. `celsius`: its own temperature. `blockStandard`: u of the block's thermometer, shared
 * by all its channels. `spreadHalfWidth`: how far this channel's junction may be from the thermometer, its own.
 */
export type ReferenceJunction = {
  readonly celsius: number;
  readonly blockStandard: number;
  readonly spreadHalfWidth: number;
};

export type JunctionEffect = {
  /** E_table(t_j) in µV: added to the measured emf, never degrees to degrees. */
  readonly microvolt: number;
  /** S(t_j), µV/°C: S(0) would be 10 % low for type S at 23 °C, 2.5 % for K. */
  readonly seebeckAtJunction: number;
  /** Signed standard effects in µV: one for all channels of the block, one this channel's own (rectangular). */
  readonly sharedMicrovolt: number;
  readonly ownMicrovolt: number;
};

/**
 * What a reference junction at its own temperature adds to the emf, E = V + E_table(t_j) (IEC 60584-1:2013, 4, law of
 * intermediate temperatures; from memory), and the uncertainties of that in µV: S(t_j)·u_block and S(t_j)·a/√3
 * (JCGM 100:2008, 4.3.7). Temperatures in °C.
 * Problems: those of `emf` beyond the type's range (type B: from 0 °C); `not-applicable` for an uncertainty below zero.
 */
export function junctionEffect(
  reference: ReferenceFunction,
  junction: ReferenceJunction,
): Outcome<JunctionEffect> {
  const { celsius, blockStandard, spreadHalfWidth } = junction;
  if (!(blockStandard >= 0 && spreadHalfWidth >= 0)) {
    return refused("not-applicable", "the uncertainty of a junction is a number from zero up");
  }
  const added = emf(reference, celsius);
  if (!added.ok) return added;
  const slope = numberOf(seebeck(reference, celsius));
  return found({
    microvolt: added.value,
    seebeckAtJunction: slope,
    sharedMicrovolt: slope * blockStandard,
    ownMicrovolt: (slope * spreadHalfWidth) / SQRT_3,
  });
}

/**
 * °C at the hot junction for each °C at the reference junction: S(t_j)/S(t), by the law of intermediate temperatures
 * (EA-4/02 S5: C_S/C_S0; S at 0 and 1000 °C 0.468, R 0.400, K 1.012, N 0.672). Pure number; enters a temperature with
 * a minus: an emf added for a junction thought too warm makes the hot junction read high. °C.
 * Problems: those of `seebeck` at either place; `no-solution` where the sensor has no sensitivity (foot of type B).
 */
export function junctionSensitivity(
  reference: ReferenceFunction,
  junctionCelsius: number,
  celsius: number,
): Outcome<number> {
  const cold = seebeck(reference, junctionCelsius);
  if (!cold.ok) return cold;
  const hot = seebeck(reference, celsius);
  if (!hot.ok) return hot;
  if (!(hot.value > 0))
    return refused("no-solution", `type ${reference.letter} does not rise at ${celsius} °C`);
  return found(cold.value / hot.value);
}

/** S holds wherever E does. */
function numberOf(outcome: Outcome<number>): number {
  return (outcome as { readonly value: number }).value;
}
