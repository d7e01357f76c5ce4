import { z } from "zod";
import { printedText } from "../certificate/printable/printed-text";
import { TypeLetter } from "../evidence/schema";
import { seenWhole } from "../typed-text";
import { decimalNumber, optionalDay, optionalDecimal, optionalText, wholeNumber } from "./field";
import { decisionRules, protections, temperatureUnits, toleranceChoices, urgencies } from "./labels";
import { lineOptionFields, readLineOptionsDraft } from "./line-options-draft";
import { lineProblems } from "./line-problems";
import { reviewFields, toldCustomerField } from "./review";
import { ruleSetProblems, ruleSets } from "./rule-set";
import { readSetpoints } from "./setpoint";
import { intervalChoices, readUseTerms } from "./use-terms";

/** One line as the front desk fills it in: some number of like sensors, and where each is to be calibrated. */
export const OrderLineInput = z
  .object({
    typeLetter: z.enum(TypeLetter.options, "Choose the type letter."),
    construction: z
      .string()
      .trim()
      .min(1, "Describe the sensor: sheath, diameter, length, how it ends.")
      .max(300, "At most 300 characters.")
      .superRefine(printedText)
      .superRefine(seenWhole),
    protection: z.enum(protections, "Choose what surrounds the wires."),
    quantity: wholeNumber(1, 200, "Write how many sensors: a whole number from 1 to 200."),
    temperatureUnit: z.enum(temperatureUnits, "Choose °C or °F.").default("C"),
    /** May be empty until the order is accepted. */
    setpoints: z
      .string()
      .trim()
      .max(600, "At most 600 characters.")
      .default("")
      .superRefine((text, context) => {
        // The unit does not matter for how it is written, so this speaks even while other fields are wrong.
        const read = readSetpoints(text, "C");
        if (!read.ok) context.addIssue(read.message);
      }),
    tolerance: z.enum(toleranceChoices, "Choose a tolerance, or none.").default("none"),
    /** ± in the line's unit. */
    ownLimit: optionalDecimal(0.001, 1000, "Write the limit as one number above 0, e.g. 2.5 for ± 2.5."),
    /** In the line's unit; left empty: not stated. */
    useFrom: optionalText(20),
    useTo: optionalText(20),
    maximum: optionalText(20),
    intervalChoice: z.enum(intervalChoices, "Choose a rule for the interval, or none.").default("none"),
    largestInterval: optionalText(20),
    ...lineOptionFields,
    /** Of a line stored already; a change of an accepted order keeps it. */
    lineId: z.union([z.literal(""), z.uuid()]).default(""),
  })
  .transform((typed, context) => {
    const line = {
      typeLetter: typed.typeLetter,
      construction: typed.construction,
      protection: typed.protection,
      quantity: typed.quantity,
      temperatureUnit: typed.temperatureUnit,
      setpoints: typed.setpoints,
      tolerance: typed.tolerance,
      ownLimit: typed.ownLimit,
      lineId: typed.lineId,
    };
    const read = readSetpoints(line.setpoints, line.temperatureUnit);
    if (!read.ok) {
      context.addIssue({ code: "custom", path: ["setpoints"], message: read.message });
      return z.NEVER;
    }
    const use = readUseTerms(typed, line.temperatureUnit, read.setpoints);
    const asked = readLineOptionsDraft(typed, {
      temperatureUnit: line.temperatureUnit,
      setpoints: read.setpoints,
      maximumCelsius: use.terms.maximumCelsius,
    });
    const whole = {
      ...line,
      options: asked.options,
      marks: asked.marks,
      useTerms: use.terms,
      setpoints: read.setpoints,
      ownLimit: line.tolerance === "own" ? line.ownLimit : null,
    };
    for (const { field, message } of [...lineProblems(whole), ...use.problems, ...asked.problems])
      context.addIssue({ code: "custom", path: [field], message });
    return whole;
  });
export type OrderLineDraft = z.output<typeof OrderLineInput>;

/** What an order says, apart from whose it is. */
const terms = {
  purchaseOrder: optionalText(80).superRefine(printedText),
  decisionRule: z.enum(decisionRules, "Choose a decision rule, or no statement.").default("none"),
  guardBandRatio: optionalDecimal(0, 3, "Write the guard band as a multiple of U, from 0 to 3, e.g. 1."),
  falseAcceptancePercent: optionalDecimal(0.0001, 50, "Write the risk in percent, up to 50, e.g. 5."),
  decisionRuleAgreedBy: optionalText(120).superRefine(printedText),
  decisionRuleAgreedOn: optionalDay,
  uncertaintyDigits: decimalNumber(1, 2, "One or two digits.").default(2),
  note: optionalText(2000),
  urgency: z.enum(urgencies, "Choose how urgent it is.").default("standard"),
  ruleSet: z.enum(ruleSets, "Choose a rule set, or none.").default("none"),
  lines: z.array(OrderLineInput).min(1, "An order has at least one line.").max(50, "At most 50 lines."),
};

type Terms = z.output<z.ZodObject<typeof terms>>;

const checkTerms = (order: Terms, context: z.RefinementCtx): void => {
  const say = (field: keyof Terms, message: string) =>
    context.addIssue({ code: "custom", path: [field], message });
  const isGuarded = order.decisionRule === "guarded" || order.decisionRule === "guarded-binary";
  if (isGuarded && order.guardBandRatio === null)
    say("guardBandRatio", "A guarded rule needs its guard band as a multiple of U, e.g. 1.");
  if (order.decisionRule === "target-risk" && order.falseAcceptancePercent === null)
    say(
      "falseAcceptancePercent",
      "A target risk needs its probability of false acceptance in percent, e.g. 5.",
    );
  if (order.decisionRule !== "none" && order.lines.every((line) => line.tolerance === "none"))
    say(
      "decisionRule",
      "No line asks for a tolerance, so there is nothing to state. Choose one on a line, or no statement.",
    );
  if (
    order.decisionRule === "none" &&
    (order.decisionRuleAgreedBy !== "" || order.decisionRuleAgreedOn !== "")
  )
    say(
      "decisionRule",
      "An agreement is named, but no rule. Choose the rule that was agreed, or empty the agreement.",
    );
  for (const [index, line] of order.lines.entries())
    for (const { field, message } of ruleSetProblems(order.ruleSet, line))
      context.addIssue({ code: "custom", path: ["lines", index, field], message });
};

const OrderTerms = z.object(terms);

export const RecordOrderInput = OrderTerms.extend({
  customerId: z.uuid("Choose the customer."),
}).superRefine(checkTerms);
export type OrderDraft = Terms;

export const AmendOrderInput = OrderTerms.extend({
  number: z.string(),
  version: wholeNumber(1, 1_000_000, "The form has lost its version. Reload the page."),
}).superRefine(checkTerms);

/** Contract review: ISO/IEC 17025:2017, 7.1.1 a to d, each answered by the person who accepts. */
export const AcceptOrderInput = z.object({
  number: z.string(),
  ...reviewFields,
  toldCustomer: toldCustomerField,
});

export const CancelOrderInput = z.object({
  number: z.string(),
  reason: z
    .string()
    .trim()
    .min(3, "Say why, in a few words.")
    .max(400, "At most 400 characters.")
    .superRefine(seenWhole),
});
