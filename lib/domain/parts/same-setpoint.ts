/** Two setpoints are one when they are the same temperature but for the rounding of °F. */
const sameTemperatureCelsius = 0.006;

export const isSameSetpoint = (left: number, right: number): boolean =>
  Math.abs(left - right) <= sameTemperatureCelsius;
