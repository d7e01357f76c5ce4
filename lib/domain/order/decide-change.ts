import { ok, type Result, refuse } from "../refusal";
import { countedSensors } from "./counted-sensors";
import type { SnapshotDifference } from "./order-snapshot";
import { ruleFigures } from "./rule-figures";
import type { OrderDraft, OrderLineDraft } from "./schema";
import type { Order, OrderLine } from "./types";
import { namedRule, type UseTerms } from "./use-terms";

type Fields = Record<string, string>;
type IsFixed = (sensorId: string, state: string) => boolean;

const sameJson = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A rule set named is the same terms, though its figure was once kept in another unit. */
const agreedUse = (terms: UseTerms) => {
  const rule = namedRule(terms);
  const named = rule ? { largestIntervalCelsius: null, intervalRule: rule } : {};
  return Object.entries({ ...terms, ...named }).toSorted();
};

/** What a result and its certificate rest on. */
const restsOn = (line: OrderLine | OrderLineDraft) => [
  line.temperatureUnit,
  line.setpoints.map(({ typed, celsius }) => [typed, celsius]),
  line.tolerance,
  line.ownLimit ?? null,
  agreedUse(line.useTerms),
  Object.entries(line.options).toSorted(),
  Object.entries(line.marks).toSorted(),
];

const tagsOf = (sensors: readonly { readonly tag: string }[]): string =>
  sensors
    .slice(0, 5)
    .map(({ tag }) => tag)
    .join(", ") + (sensors.length > 5 ? ` and ${sensors.length - 5} more` : "");

const lineFields = (line: OrderLine, draft: OrderLineDraft, at: string, isFixed: IsFixed): Fields => {
  const fields: Fields = {};
  const { sensors } = line;
  if (sensors.length === 0) return fields;
  for (const name of ["typeLetter", "protection", "construction"] as const)
    if (line[name] !== draft[name])
      fields[`${at}.${name}`] =
        `${tagsOf(sensors)} came as “${line[name]}” and stay so. What differs goes on a line of its own.`;
  const counted = countedSensors(sensors).length;
  if (draft.quantity < counted)
    fields[`${at}.quantity`] = `${counted} have been taken in already: not fewer than that.`;
  const fixed = sensors.filter(({ id, state }) => isFixed(id, state));
  if (fixed.length > 0 && !sameJson(restsOn(line), restsOn(draft)))
    fields[`${at}.setpoints`] =
      `${tagsOf(fixed)} of this line lie with the signatory or have their certificate: the line stays as it was for them. Put what is new on a line of its own, or have the run returned first.`;
  return fields;
};

const termFields = (order: Order, draft: OrderDraft, fixed: readonly { readonly tag: string }[]): Fields => {
  if (fixed.length === 0) return {};
  const because = `${tagsOf(fixed)} lie with the signatory or have their certificate under the terms as they were. Record another order for other terms.`;
  const rule = (terms: Order | OrderDraft) => [
    terms.decisionRule,
    ruleFigures(terms),
    // Who agreed and when stand in the evidence of a limit of the customer's own.
    terms.decisionRuleAgreedBy || null,
    terms.decisionRuleAgreedOn || null,
  ];
  return {
    ...(sameJson(rule(order), rule(draft)) ? {} : { decisionRule: because }),
    ...(order.uncertaintyDigits === draft.uncertaintyDigits ? {} : { uncertaintyDigits: because }),
    ...(order.ruleSet === draft.ruleSet ? {} : { ruleSet: because }),
  };
};

/**
 * A change of an accepted order (ISO/IEC 17025:2017, 7.1.6): what sensors are stays, what results already rest on stays,
 * everything else may change with its reason and after review.
 */
export const decideChange = (
  order: Order,
  draft: OrderDraft,
  certified: ReadonlySet<string>,
  differences: readonly SnapshotDifference[],
): Result<"changed"> => {
  if (order.state !== "accepted")
    return refuse(
      "wrong-state",
      order.state === "recorded"
        ? "This order is not accepted yet: amend it instead. Nothing was changed."
        : `This order is ${order.state}: nothing of it can change. Record another order. Nothing was changed.`,
    );
  const isFixed: IsFixed = (id, state) => state === "in-review" || state === "issued" || certified.has(id);
  const fields: Fields = {};
  for (const [index, line] of draft.lines.entries()) {
    const stored = order.lines.find(({ id }) => id === line.lineId);
    if (line.lineId !== "" && !stored)
      fields[`lines.${index}.construction`] = "This line is gone. Reload the page.";
    if (stored) Object.assign(fields, lineFields(stored, line, `lines.${index}`, isFixed));
  }
  const lost = order.lines.filter(
    ({ id, sensors }) => sensors.length > 0 && !draft.lines.some(({ lineId }) => lineId === id),
  );
  if (lost.length > 0)
    fields.lines = `Line ${lost.map(({ position }) => position).join(", ")} has sensors here and cannot be taken away. Reload the page.`;
  const sensors = order.lines.flatMap((line) => line.sensors);
  Object.assign(
    fields,
    termFields(
      order,
      draft,
      sensors.filter(({ id, state }) => isFixed(id, state)),
    ),
  );
  if (Object.keys(fields).length > 0)
    return refuse(
      "rule",
      "Some of it cannot change any more. Nothing was changed; what you typed is still here.",
      fields,
    );
  if (differences.length === 0)
    return refuse("rule", "Nothing differs from what was accepted. Nothing was changed.");
  return ok("changed");
};
