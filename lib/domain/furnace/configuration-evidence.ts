import type { z } from "zod";
import { rectangular } from "../equipment/evidence-inputs";
import type { ConfigurationEvidence } from "../evidence/schema";
import type { Characterisation, Furnace, FurnaceConfiguration } from "./types";

const included = {
  kind: "zero",
  reason: "included in the combined uniformity of the configuration",
} as const;
const apart = {
  axial: included,
  radial: included,
  gradient: { kind: "zero", reason: "no gradient between places is corrected" },
} as const;

export const configurationEvidenceOf = (
  furnace: Pick<Furnace, "tag" | "name">,
  configuration: Pick<FurnaceConfiguration, "name" | "kind">,
  characterisation: Characterisation,
): z.infer<typeof ConfigurationEvidence> => ({
  furnace: `${furnace.tag} ${furnace.name}`.trim(),
  kind: configuration.kind,
  name: configuration.name,
  characterisation: {
    performedOn: characterisation.performedOn,
    validUntil: characterisation.validUntil,
    uniformity: rectangular(
      characterisation.uniformityHalfWidthCelsius,
      "celsius",
      `characterisation of ${characterisation.performedOn}`,
    ),
    ...apart,
    statement: characterisation.statement,
  },
});
