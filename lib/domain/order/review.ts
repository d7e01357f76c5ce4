import { z } from "zod";
import { ok, type Result, refuse } from "../refusal";
import { optionalText, wholeNumber } from "./field";
import type { LineMarks } from "./line-marks";

/** The four questions of ISO/IEC 17025:2017, 7.1.1 a to d, as they are asked and kept. */
export const reviewQuestions = [
  { key: "requirementsUnderstood", clause: "7.1.1 a", title: "Requirements defined and understood" },
  { key: "capabilityAndResources", clause: "7.1.1 b", title: "Capability and resources" },
  { key: "externalProviders", clause: "7.1.1 c", title: "External providers" },
  { key: "methodSuitable", clause: "7.1.1 d", title: "Method suits the requirements" },
] as const;
export type ReviewQuestion = (typeof reviewQuestions)[number]["key"];

const ticked = (message: string) =>
  z
    .union([z.boolean(), z.literal("on")])
    .default(false)
    .transform((value) => value === true || value === "on")
    .refine((value) => value, message)
    .transform(() => true as const);

/** Fields of a form that reviews: each question answered by a person, with a remark where there is something to say. */
export const reviewFields = {
  version: wholeNumber(1, 1_000_000, "The form has lost its version. Reload the page."),
  requirementsUnderstood: ticked("Tick this once what the customer requires is defined and understood."),
  capabilityAndResources: ticked("Tick this once the laboratory has the capability and the resources."),
  externalProviders: z.enum(["none", "approved"], "Say whether work goes to an external provider."),
  methodSuitable: ticked("Tick this once the method suits what the customer requires."),
  requirementsUnderstoodRemark: optionalText(500),
  capabilityAndResourcesRemark: optionalText(500),
  externalProvidersRemark: optionalText(500),
  methodSuitableRemark: optionalText(500),
};
/** Ticked once the customer has heard of what the review finds; asked only where it finds something. */
export const toldCustomerField = z
  .union([z.boolean(), z.literal("on")])
  .default(false)
  .transform((value) => value !== false);

export type ReviewInput = z.output<z.ZodObject<typeof reviewFields>>;

const StoredAnswer = z.strictObject({ answer: z.enum(["yes", "none", "approved"]), remark: z.string() });

/** As kept with the order: the answers, and what the customer was told. */
export const ReviewAnswers = z.strictObject({
  requirementsUnderstood: StoredAnswer,
  capabilityAndResources: StoredAnswer,
  externalProviders: StoredAnswer,
  methodSuitable: StoredAnswer,
  toldCustomer: z.array(z.string()),
});
export type ReviewAnswers = z.output<typeof ReviewAnswers>;

export const composeReviewAnswers = (input: ReviewInput, told: readonly string[]): ReviewAnswers => ({
  requirementsUnderstood: { answer: "yes", remark: input.requirementsUnderstoodRemark },
  capabilityAndResources: { answer: "yes", remark: input.capabilityAndResourcesRemark },
  externalProviders: { answer: input.externalProviders, remark: input.externalProvidersRemark },
  methodSuitable: { answer: "yes", remark: input.methodSuitableRemark },
  toldCustomer: [...told],
});

/** The answers must fit the order: a line that leaves the house has a provider, and the customer approves (7.1.1 c). */
export const decideReviewAnswers = (
  lines: readonly { readonly position: number; readonly marks: LineMarks }[],
  input: Pick<ReviewInput, "externalProviders">,
): Result<"answered"> => {
  const away = lines.filter(({ marks }) => marks.providerId !== null).map(({ position }) => position);
  if (away.length > 0 && input.externalProviders === "none")
    return refuse("rule", `Line ${away.join(", ")} goes to an external provider. Nothing was changed.`, {
      externalProviders: "Tell the customer, have it approved, and say so here; or do the line here.",
    });
  return ok("answered");
};
