import type { EvidenceProblem } from "./evaluation";
import { characterisedAbout } from "./furnace-input-at";
import type { Evidence } from "./schema";

/** A furnace's figures hold between the temperatures they were found at: nothing is carried beyond them. */
export function checkCharacterised(evidence: Evidence): EvidenceProblem[] {
  const { axial, radial } = evidence.configuration.characterisation;
  return Object.entries({ axial, radial }).flatMap(([name, input]) => {
    if (input.kind !== "by-temperature") return [];
    const temperatures = input.at.map(({ celsius }) => celsius);
    return evidence.setpoints
      .filter(({ nominalCelsius }) => characterisedAbout(input.at, nominalCelsius).length === 0)
      .map(({ nominalCelsius }) => ({
        path: `configuration.characterisation.${name}`,
        message: `The furnace was characterised from ${Math.min(...temperatures)} to ${Math.max(...temperatures)} °C; ${nominalCelsius} °C lies beyond. Characterise it there, or leave the setpoint out.`,
      }));
  });
}
