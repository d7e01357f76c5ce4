import { ruleFigures } from "../order/rule-figures";
import type { OrderDraft, OrderLineDraft } from "../order/schema";
import type { Order, OrderLine } from "../order/types";

type Same = Pick<
  OrderLineDraft,
  "typeLetter" | "construction" | "protection" | "temperatureUnit" | "setpoints"
>;

const sameText = ({ typeLetter, construction, protection, temperatureUnit, setpoints }: Same): string =>
  JSON.stringify([
    typeLetter,
    construction,
    protection,
    temperatureUnit,
    setpoints.map(({ typed }) => typed),
  ]);

/** For each line requested the line it repeats, each once, its own place first; undefined: described anew. */
const repeatedLines = (
  lines: readonly OrderLineDraft[],
  before: readonly OrderLine[],
): readonly (OrderLine | undefined)[] => {
  const inPlace = lines.map((line, index) => {
    const there = before[index];
    return there && sameText(there) === sameText(line) ? there : undefined;
  });
  const left = before.filter((line) => !inPlace.includes(line));
  return lines.map((line, index) => {
    if (inPlace[index]) return inPlace[index];
    const at = left.findIndex((one) => sameText(one) === sameText(line));
    return at < 0 ? undefined : left.splice(at, 1)[0];
  });
};

const withTermsOf = (line: OrderLineDraft, before: OrderLine): OrderLineDraft => {
  const { maximumCelsius, largestIntervalCelsius, intervalRule } = before.useTerms;
  return {
    ...line,
    // What the request's form can say counts as it says it: the range of use, the group's name.
    useTerms: { ...line.useTerms, maximumCelsius, largestIntervalCelsius, intervalRule },
    options: before.options,
    marks: { ...before.marks, groupName: line.marks.groupName },
  };
};

/**
 * A request for the same work once more, with what was agreed for that work and the request's form cannot say. Who agreed
 * to the rule, and when, is said anew: nothing is agreed by being repeated.
 */
export const withRepeatedTerms = (draft: OrderDraft, repeated: Order): OrderDraft => {
  const before = repeatedLines(draft.lines, repeated.lines);
  return {
    ...draft,
    ruleSet: repeated.ruleSet,
    decisionRule: repeated.decisionRule,
    ...ruleFigures(repeated),
    uncertaintyDigits: repeated.uncertaintyDigits,
    lines: draft.lines.map((line, index) => {
      const same = before[index];
      return same ? withTermsOf(line, same) : line;
    }),
  };
};
