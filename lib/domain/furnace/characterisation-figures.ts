import { z } from "zod";

const figure = {
  /** Half of the full range, or what bounds it, °C. */
  halfWidthCelsius: z.number().nonnegative(),
  /** u of the half-width. */
  standardCelsius: z.number().nonnegative(),
};

/** What a configuration was found to be at one temperature. A kind that was not measured there is null. */
const AtTemperature = z.strictObject({
  celsius: z.number(),
  axial: z
    .strictObject({
      ...figure,
      fullRangeCelsius: z.number().nonnegative(),
      fromMillimetre: z.number(),
      toMillimetre: z.number(),
    })
    .nullable(),
  positions: z
    .strictObject({
      ...figure,
      fullRangeCelsius: z.number().nonnegative(),
      /** Each against the centre. */
      places: z.array(z.strictObject({ place: z.string(), celsius: z.number() })).min(2),
    })
    .nullable(),
  stability: z.strictObject({ ...figure, windowMinutes: z.number().positive() }).nullable(),
  immersion: z
    .strictObject({
      ...figure,
      bestMillimetre: z.number(),
      fromMillimetre: z.number(),
      toMillimetre: z.number(),
    })
    .nullable(),
});
export type FiguresAtTemperature = z.infer<typeof AtTemperature>;

/** The figures of a measured characterisation, stored beside its statement: what runs rest on. */
export const CharacterisationFigures = z.strictObject({
  /** Of the characterisation's run, such as CH-2026-0003. */
  number: z.string().min(1).max(40),
  lengthMillimetre: z.number().positive(),
  /** Every half-width is half of a full range. */
  range: z.literal("half"),
  temperatures: z.array(AtTemperature).min(1),
});
export type CharacterisationFigures = z.infer<typeof CharacterisationFigures>;

/** Stored text read back. It was composed here, so a misfit is a defect and throws. */
export const readFigures = (text: string): CharacterisationFigures =>
  CharacterisationFigures.parse(JSON.parse(text));

/** The temperatures a configuration may be used between. */
export const characterisedRange = (
  figures: CharacterisationFigures,
): { readonly fromCelsius: number; readonly toCelsius: number } => {
  const all = figures.temperatures.map(({ celsius }) => celsius);
  return { fromCelsius: Math.min(...all), toCelsius: Math.max(...all) };
};
