import { capabilitySources } from "@/lib/data/order/capability-sources";
import { capabilitySummary, orderCapability, type TypedCapability } from "@/lib/domain/order/capability";
import { readTypedLines, readTypedRule } from "@/lib/domain/order/typed-lines";
import type { Actor } from "@/lib/domain/staff/actor";
import { answer } from "../view";

type Typed = Readonly<Record<string, string>>;

/** What the laboratory could do of an order that is still being typed. Nothing of it is stored. */
export const typedCapabilityView = (
  actor: Actor,
  typed: { readonly lines: readonly Typed[]; readonly rule: Typed },
  now: Date,
) =>
  answer(actor, "order.record", async (tx): Promise<TypedCapability> => {
    const lines = readTypedLines(typed.lines);
    if (lines.length === 0) return { answers: [], summary: "" };
    const answers = orderCapability(lines, readTypedRule(typed.rule), await capabilitySources(tx, now));
    return { answers, summary: capabilitySummary(answers) };
  });
