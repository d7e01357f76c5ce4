import type { DecisionRule } from "../evidence/schema";
import { type Message, type Said, say, sayAll } from "./catalogue/message";
import { english } from "./catalogue/settle";

/**
 * Specific risk of false acceptance at the acceptance limit for a normal distribution and k = 2, by guard band w = r·U:
 * ILAC-G8:09/2019, table of guard bands (0.83, 1, 1.5, 3). Between two lines the bound of the smaller ratio holds.
 */
const riskBounds: readonly { readonly ratio: number; readonly bound: Said }[] = [
  { ratio: 3, bound: say("risk.bound-million") },
  { ratio: 1.5, bound: "0.16 %" },
  { ratio: 1, bound: "2.5 %" },
  { ratio: 0.83, bound: "5 %" },
];

const binary = say("verdicts.binary");
const verdicts = (isBinary: boolean): Message => (isBinary ? binary : say("verdicts.non-binary"));

type RuleMessages = { readonly rule: Message; readonly risk: Message };

const simple = ({ largestRatio }: Extract<DecisionRule, { kind: "simple" }>): RuleMessages => ({
  rule: sayAll([
    say("rule.simple"),
    ...(largestRatio === undefined ? [] : [say("rule.simple-ratio", { ratio: String(largestRatio) })]),
  ]),
  risk: say("risk.simple"),
});

const targetRisk = (rule: Extract<DecisionRule, { kind: "target-risk" }>): RuleMessages => ({
  rule: say("rule.target-risk", { verdicts: verdicts(rule.isBinary === true) }),
  risk: say("risk.target-risk", { percent: String(Number((rule.falseAcceptance * 100).toPrecision(6))) }),
});

/** 7.8.6.1: the rule and its risk, by ILAC-G8:09/2019 and JCGM 106:2012. Null where no statement was agreed. */
export const decisionRuleMessages = (rule: DecisionRule): RuleMessages | null => {
  if (rule.kind === "none") return null;
  if (rule.kind === "target-risk") return targetRisk(rule);
  if (rule.kind === "simple") return simple(rule);
  if (rule.kind === "guarded-binary" && rule.guardBandRatio < 0)
    return {
      rule: say("rule.relaxed", { ratio: String(-rule.guardBandRatio), verdicts: binary }),
      risk: say("risk.relaxed"),
    };
  const isBinary = rule.kind === "guarded-binary";
  const bound = riskBounds.find((line) => rule.guardBandRatio >= line.ratio)?.bound ?? "50 %";
  return {
    rule: say("rule.guarded", { ratio: String(rule.guardBandRatio), verdicts: verdicts(isBinary) }),
    risk: sayAll([say("risk.guarded", { bound }), ...(isBinary ? [] : [say("risk.conditional")])]),
  };
};

/** The same in English. */
export const decisionRuleText = (rule: DecisionRule): { rule: string; risk: string } | null => {
  const messages = decisionRuleMessages(rule);
  return messages && { rule: english(messages.rule), risk: english(messages.risk) };
};
