import { z } from "zod";
import { day, requiredLine, requiredLines, rowVersion } from "../typed-text";
import { configurationKinds } from "./types";

const millimetre = z
  .number("Write a number in millimetres.")
  .positive("More than nought.")
  .max(5000, "In millimetres, at most 5000.");
const celsius = z.number("Write a number in °C.").min(-100).max(1800, "At most 1800 °C.");

const Described = z.strictObject({
  name: requiredLine("Write what people call it.", 120),
  maker: requiredLine("Write who made it.", 120),
  serial: requiredLine("Write its serial number.", 120),
  minimumCelsius: celsius,
  maximumCelsius: celsius,
  boreMillimetre: millimetre,
  lengthMillimetre: millimetre,
});

const rangeHolds = (furnace: { minimumCelsius: number; maximumCelsius: number }): boolean =>
  furnace.minimumCelsius < furnace.maximumCelsius;
const rangeMessage = { path: ["maximumCelsius"], message: "The highest temperature lies above the lowest." };

export const FurnaceInput = Described.extend({
  tag: requiredLine("Write the tag that stands on it, such as FUR-01.", 40),
}).refine(rangeHolds, rangeMessage);

export const FurnaceChange = Described.extend({ id: z.uuid(), version: rowVersion }).refine(
  rangeHolds,
  rangeMessage,
);

export const ConfigurationInput = z.strictObject({
  furnaceId: z.uuid(),
  name: requiredLine("Write a name, such as Alumina block, 8 bores.", 120),
  kind: z.enum(configurationKinds, "Choose one."),
  places: z.int("Write a whole number.").min(1).max(60, "At most 60 places."),
  immersionMillimetre: millimetre,
});

export const CharacterisationInput = z
  .strictObject({
    configurationId: z.uuid(),
    performedOn: day,
    validUntil: day,
    uniformityHalfWidthCelsius: z.number("Write a number in °C.").nonnegative("Without sign.").max(50),
    statement: requiredLines(
      "Say over which length, at which temperatures, and that it is the half-width: without these the figure means nothing.",
      600,
    ),
  })
  .refine((input) => input.validUntil > input.performedOn, {
    path: ["validUntil"],
    message: "It holds until a day after it was measured.",
  });
