import { z } from "zod";
import type { TypeLetter } from "../evidence/schema";
import { type AskedTolerance, storedTolerance } from "./asked-tolerance";
import {
  type AgreedRule,
  decisionRuleText,
  type Protection,
  protectionLabels,
  temperatureUnitLabels,
  type Urgency,
  urgencyLabels,
} from "./labels";
import { type LineMarks, marksText } from "./line-marks";
import { type LineOptions, lineOptionPhrases } from "./options";
import { ruleFigures } from "./rule-figures";
import { type RuleSet, ruleSetLabels } from "./rule-set";
import type { Setpoint } from "./setpoint";
import type { ProviderChoice } from "./subcontracting";
import { tolerancePhrase } from "./tolerance-phrase";
import { termsOfUseText, type UseTerms } from "./use-terms";

type SnapshotLine = AskedTolerance & {
  /** "" = not stored yet. */
  readonly lineId: string;
  readonly typeLetter: TypeLetter;
  readonly construction: string;
  readonly protection: Protection;
  readonly quantity: number;
  readonly setpoints: readonly Setpoint[];
  readonly useTerms: UseTerms;
  readonly options: LineOptions;
  readonly marks: LineMarks;
};

/** What an order says: stored or as typed, in the same words. */
export type SnapshotTerms = AgreedRule & {
  readonly purchaseOrder: string | null;
  readonly decisionRuleAgreedBy: string | null;
  readonly decisionRuleAgreedOn: string | null;
  readonly uncertaintyDigits: number;
  readonly note: string;
  readonly urgency: Urgency;
  readonly ruleSet: RuleSet;
  readonly lines: readonly SnapshotLine[];
};

const Said = z.record(z.string(), z.string());

/** An order in words, frozen: label → what it says. Kept with each change, so that it reads the same ever after. */
export const OrderSnapshot = z.strictObject({
  terms: Said,
  lines: z.array(z.strictObject({ lineId: z.string(), says: Said })),
});
export type OrderSnapshot = z.output<typeof OrderSnapshot>;

const lineSays = (line: SnapshotLine, providers: readonly ProviderChoice[]) => {
  const unit = temperatureUnitLabels[line.temperatureUnit];
  const provider = providers.find(({ id }) => id === line.marks.providerId)?.name ?? "";
  return {
    "how many": String(line.quantity),
    type: line.typeLetter,
    "about the wires": protectionLabels[line.protection],
    construction: line.construction,
    setpoints:
      line.setpoints.length > 0 ? `${line.setpoints.map(({ typed }) => typed).join(" ")} ${unit}` : "",
    tolerance: tolerancePhrase(storedTolerance(line)),
    use: termsOfUseText(line.useTerms, line.temperatureUnit),
    group: line.marks.groupName,
    options: lineOptionPhrases(line.options, line.temperatureUnit).join("; "),
    "where it is done": marksText(line.marks, provider),
  };
};

export const orderSnapshot = (order: SnapshotTerms, providers: readonly ProviderChoice[]): OrderSnapshot => ({
  terms: {
    "customer’s order number": order.purchaseOrder ?? "",
    urgency: urgencyLabels[order.urgency],
    "rule set": ruleSetLabels[order.ruleSet],
    "decision rule": decisionRuleText({ ...order, ...ruleFigures(order) }),
    "rule agreed": [order.decisionRuleAgreedBy, order.decisionRuleAgreedOn].filter(Boolean).join(", "),
    "digits of U": String(order.uncertaintyDigits),
    note: order.note,
  },
  lines: order.lines.map((line) => ({ lineId: line.lineId, says: lineSays(line, providers) })),
});

export type SnapshotDifference = {
  /** "Line 2, setpoints". */
  readonly where: string;
  readonly before: string;
  readonly after: string;
};

type Says = Readonly<Record<string, string>>;

const differing = (before: Says, after: Says, at: (label: string) => string) =>
  Object.keys(after).flatMap((label): SnapshotDifference[] => {
    const [was, is] = [before[label] ?? "", after[label] ?? ""];
    return was === is ? [] : [{ where: at(label), before: was, after: is }];
  });

const whole = (says: Says): string =>
  `${says["how many"]} × type ${says.type}, ${says.construction}; ${says.setpoints || "no setpoints"}`;

/** What differs between two snapshots: terms first, then line by line as they stand afterwards, then what is gone. */
export const snapshotDifferences = (
  before: OrderSnapshot,
  after: OrderSnapshot,
): readonly SnapshotDifference[] => [
  ...differing(before.terms, after.terms, (label) => label.charAt(0).toUpperCase() + label.slice(1)),
  ...after.lines.flatMap(({ lineId, says }, index) => {
    const was = before.lines.find((line) => line.lineId !== "" && line.lineId === lineId);
    const name = `Line ${index + 1}`;
    return was
      ? differing(was.says, says, (label) => `${name}, ${label}`)
      : [{ where: `${name}, new`, before: "", after: whole(says) }];
  }),
  ...before.lines.flatMap(({ lineId, says }, index) =>
    after.lines.some((line) => line.lineId === lineId)
      ? []
      : [{ where: `Line ${index + 1} of before, taken away`, before: whole(says), after: "" }],
  ),
];
