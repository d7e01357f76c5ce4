import type { z } from "zod";
import { ok, type Result, refuse } from "../refusal";
import type { ConfigurationInput } from "./schema";

type Input = z.output<typeof ConfigurationInput>;
type Furnace = { readonly lengthMillimetre: number; readonly boreMillimetre: number };
type Fields = Record<string, string>;

const sayBores = (fields: Fields, { bores }: Input, tube: Furnace): void => {
  for (const [index, bore] of bores.entries()) {
    const out = Math.sqrt(bore.xMillimetre ** 2 + bore.yMillimetre ** 2) + bore.diameterMillimetre / 2;
    if (out > tube.boreMillimetre / 2)
      fields[`bores.${index}.xMillimetre`] =
        `Bore ${bore.number} reaches ${out.toFixed(1)} mm from the middle; the tube is clear to ${tube.boreMillimetre / 2} mm.`;
    const hit = bores.slice(0, index).find((other) => {
      const apart = Math.sqrt(
        (bore.xMillimetre - other.xMillimetre) ** 2 + (bore.yMillimetre - other.yMillimetre) ** 2,
      );
      return apart < (bore.diameterMillimetre + other.diameterMillimetre) / 2;
    });
    if (hit) fields[`bores.${index}.xMillimetre`] = `Bore ${bore.number} runs into bore ${hit.number}.`;
  }
};

/** Whether a configuration fits into its furnace, and a block's bores into the block. */
export const decideConfiguration = (input: Input, furnace: Furnace): Result<null> => {
  const fields: Fields = {};
  if (input.immersionMillimetre > furnace.lengthMillimetre)
    fields.immersionMillimetre = `The furnace is ${furnace.lengthMillimetre} mm long.`;
  if (input.kind === "bare-tube" && input.bores.length > 0)
    fields.bores = "A bare tube has no bores. Choose the block, or leave them out.";
  if (input.kind === "equalising-block" && input.bores.length > 0 && input.bores.length !== input.places)
    fields.places = `${input.bores.length} bores are listed below: a block has as many places as bores.`;
  if ((input.bundleDiameterMillimetre ?? 0) > furnace.boreMillimetre)
    fields.bundleDiameterMillimetre = `The tube is ${furnace.boreMillimetre} mm wide.`;
  sayBores(fields, input, furnace);
  return Object.keys(fields).length > 0
    ? refuse("invalid", "Nothing was stored; what you typed is still here.", fields)
    : ok(null);
};
