import { characterisedRange } from "./characterisation-figures";
import type { Characterisation } from "./types";

/** Nothing is carried beyond the temperatures a furnace was characterised at. A sentence where a setpoint lies there. */
export const setpointsCharacterised = (
  characterisation: Pick<Characterisation, "figures"> | null,
  setpointsCelsius: readonly number[],
): string | null => {
  if (!characterisation?.figures) return null;
  const { fromCelsius, toCelsius } = characterisedRange(characterisation.figures);
  const beyond = setpointsCelsius.filter((celsius) => celsius < fromCelsius || celsius > toCelsius);
  return beyond.length === 0
    ? null
    : `The furnace was characterised from ${fromCelsius} to ${toCelsius} °C; ${beyond.join(", ")} °C lies beyond. Choose other setpoints, or characterise it there.`;
};
