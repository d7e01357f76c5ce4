import type { z } from "zod";
import { rectangular } from "../equipment/evidence-inputs";
import type { ConfigurationEvidence } from "../evidence/schema";
import type { FurnaceInput } from "../evidence/uncertainty-input";
import type { CharacterisationFigures } from "./characterisation-figures";
import type { Characterisation, Furnace, FurnaceConfiguration } from "./types";

type Evidenced = z.infer<typeof ConfigurationEvidence>["characterisation"];
type Inputs = Pick<Evidenced, "uniformity" | "axial" | "radial" | "gradient">;

/** Where sensors and references stand in the load, by the names of their places. */
export type LoadedPlaces = {
  readonly sensors: readonly string[];
  readonly references: readonly string[];
};

const uncorrected = { kind: "zero", reason: "no gradient between places is corrected" } as const;
const included = {
  kind: "zero",
  reason: "included in the combined uniformity of the configuration",
} as const;

const typedInputs = ({ performedOn, uniformityHalfWidthCelsius }: Characterisation): Inputs => ({
  uniformity: rectangular(uniformityHalfWidthCelsius, "celsius", `characterisation of ${performedOn}`),
  axial: included,
  radial: included,
  gradient: uncorrected,
});

type Positions = NonNullable<CharacterisationFigures["temperatures"][number]["positions"]>;

/**
 * Half the range holds for a sensor against the middle of the positions. References that do not stand in the middle may differ
 * from a sensor by up to the whole range: where the places of the load were surveyed by name, the largest difference found between
 * a sensor's place and the references' mean counts if it is more.
 */
const positionsHalfWidth = (positions: Positions, loaded: LoadedPlaces | undefined): number => {
  const at = (names: readonly string[]) =>
    names.flatMap((name) => positions.places.find(({ place }) => place === name)?.celsius ?? []);
  const references = at(loaded?.references ?? []);
  const sensors = at(loaded?.sensors ?? []);
  if (!loaded || references.length === 0 || references.length < loaded.references.length)
    return positions.halfWidthCelsius;
  const middle = references.reduce((sum, one) => sum + one, 0) / references.length;
  return Math.max(positions.halfWidthCelsius, ...sensors.map((one) => Math.abs(one - middle)));
};

const measuredInputs = (
  { performedOn }: Characterisation,
  figures: CharacterisationFigures,
  loaded: LoadedPlaces | undefined,
): Inputs => {
  const source = (what: string) =>
    `characterisation ${figures.number} of ${performedOn}, ${what}, half range over ${figures.lengthMillimetre} mm`;
  const byTemperature = (
    what: string,
    of: (at: CharacterisationFigures["temperatures"][number]) => {
      halfWidthCelsius: number;
      standardCelsius: number;
    },
  ): FurnaceInput => ({
    kind: "by-temperature",
    at: figures.temperatures.map((at) => {
      const { halfWidthCelsius, standardCelsius } = of(at);
      return { celsius: at.celsius, halfWidthCelsius, standardCelsius };
    }),
    source: source(what),
  });
  const nothing = { halfWidthCelsius: 0, standardCelsius: 0 };
  return {
    uniformity: { kind: "zero", reason: "stated apart, along the tube and between positions" },
    axial: byTemperature("probe moved along the tube", ({ axial }) => axial ?? nothing),
    radial: byTemperature("thermocouples exchanged between positions", ({ positions }) =>
      positions ? { ...positions, halfWidthCelsius: positionsHalfWidth(positions, loaded) } : nothing,
    ),
    gradient: uncorrected,
  };
};

/** What a run's budget takes from the furnace: measured figures by temperature, or the one figure that was typed. */
export const configurationEvidenceOf = (
  furnace: Pick<Furnace, "tag" | "name">,
  configuration: Pick<FurnaceConfiguration, "name" | "kind">,
  characterisation: Characterisation,
  loaded?: LoadedPlaces,
): z.infer<typeof ConfigurationEvidence> => {
  const { figures } = characterisation;
  return {
    furnace: `${furnace.tag} ${furnace.name}`.trim(),
    kind: configuration.kind,
    name: configuration.name,
    characterisation: {
      performedOn: characterisation.performedOn,
      validUntil: characterisation.validUntil,
      ...(figures ? measuredInputs(characterisation, figures, loaded) : typedInputs(characterisation)),
      statement: characterisation.statement,
    },
  };
};
