/**
 * E_X(t_n) = E_X(t) + S·(t_n − t): the sensor's emf carried from the reference temperature to the nominal.
 * The sign is the trap: nominal minus furnace. A furnace that is too hot lowers the emf
 * (EA-4/02 S5: 36 248 µV at 1000.5 °C gives 36 229 µV at 1000 °C, not 36 267).
 * The neglected second-order term ½·S′·Δ² is 0.13 µV for type K at 1000 °C and 5 °C: `normaliseToNominal` has it.
 * µV, °C and µV/°C; any range; no error cases: NaN stays NaN.
 */
export function emfAtNominal(
  microvolt: number,
  carriedCelsius: number,
  seebeckMicrovoltPerCelsius: number,
): number {
  return microvolt + seebeckMicrovoltPerCelsius * carriedCelsius;
}
