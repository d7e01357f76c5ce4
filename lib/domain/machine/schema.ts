import { z } from "zod";
import { requiredLine } from "../typed-text";
import { tokenScopes } from "./scopes";
import { webhookTopicLabels } from "./topics";

const hearable = Object.keys(webhookTopicLabels) as [keyof typeof webhookTopicLabels];

/** A checkbox alone arrives as one text, several as a list. */
const several = <T extends z.ZodType>(item: T, most: string) =>
  z.preprocess((value) => (typeof value === "string" ? [value] : (value ?? [])), z.array(item).min(1, most));

export const MakeTokenInput = z.strictObject({
  name: requiredLine("Say which program it is for, e.g. Plant maintenance system.", 80),
  scopes: several(z.enum(tokenScopes), "Choose what the token opens."),
  days: z.coerce.number("Choose how long it lasts.").int().min(1).max(730, "At most two years."),
});

export const MakeWebhookInput = z.strictObject({
  url: z
    .string()
    .trim()
    .max(500, "At most 500 characters.")
    .pipe(z.url({ protocol: /^https?$/, error: "Write an address that begins with https://." })),
  topics: several(z.enum(hearable), "Choose what it wants to hear of."),
});
