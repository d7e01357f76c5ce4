import { z } from "zod";
import { TypeLetter } from "../evidence/schema";
import { day, requiredLine } from "../typed-text";
import { priceKeys, pricePers } from "./keys";

export const RecordPriceInput = z
  .strictObject({
    key: z.enum(priceKeys, "Choose what the price is for."),
    title: requiredLine("Write the words that stand on the offer.", 120),
    per: z.enum(pricePers, "Choose what it is counted by."),
    /** Left empty: every type. */
    typeLetter: z.union([
      z.literal("").transform(() => null),
      z.null(),
      z.enum(TypeLetter.options, "Choose a type, or every type."),
    ]),
    /** As typed, in the laboratory's currency: read by `parseMoney`, which knows its digits. */
    amount: z.string("Write the price.").max(20, "At most 20 characters."),
    validFrom: day,
  })
  .refine(({ key, per }) => key !== "minimum-order" || per === "order", {
    path: ["per"],
    message: "The minimum is of the order, once.",
  })
  .refine(({ key, typeLetter }) => key !== "minimum-order" || typeLetter === null, {
    path: ["typeLetter"],
    message: "The minimum is of the order, whatever its types.",
  });

export const EndPriceInput = z.strictObject({ id: z.uuid("Choose a price of the list."), lastDay: day });
