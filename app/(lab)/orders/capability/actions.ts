"use server";
import { headers } from "next/headers";
import type { TypedCapability } from "@/lib/domain/order/capability";
import { typedCapabilityView } from "@/lib/views/order/typed-capability";
import { currentActor } from "@/lib/web/auth";
import { env } from "@/lib/web/env";
import { rows, text } from "@/lib/web/form-fields";
import { isOwnOrigin } from "@/lib/web/origin";
import { lineFields } from "../line-draft";

const nothing: TypedCapability = { answers: [], summary: "" };
const ruleFields = ["decisionRule", "guardBandRatio", "falseAcceptancePercent"];

/** Asked while lines are typed; it stores nothing, and to whoever may not ask it says nothing. */
export const answerCapability = async (data: FormData): Promise<TypedCapability> => {
  if (!isOwnOrigin((await headers()).get("origin"), env().publicOrigin)) return nothing;
  const actor = await currentActor();
  if (!actor) return nothing;
  const rule = Object.fromEntries(ruleFields.map((name) => [name, text(data, name)]));
  try {
    return await typedCapabilityView(actor, { lines: rows(data, "lines", lineFields), rule }, new Date());
  } catch (error) {
    console.error("answering an order that is being typed failed", error);
    return {
      answers: [],
      summary: "This could not be answered now. The order can be recorded all the same.",
    };
  }
};
