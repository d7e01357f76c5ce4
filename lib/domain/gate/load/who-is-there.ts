import type { Found, GateCheck } from "../finding";
import type { GatePlan } from "../plan";

const source = "a comparison needs both";

const assess = ({ places }: { readonly places: readonly Pick<GatePlan["places"][number], "kind">[] }) => {
  const has = (kind: string): boolean => places.some((place) => place.kind === kind);
  const found: Found[] = [];
  const lack = (code: "no-sensor" | "no-reference", reason: string, remedy: string): void => {
    found.push({ code, outcome: "breach", subject: "", reason, remedy, source });
  };
  if (!has("sensor")) lack("no-sensor", "Nothing is to be calibrated.", "Load at least one sensor.");
  if (!has("reference"))
    lack(
      "no-reference",
      "Nothing says how hot the furnace is.",
      "Load at least one reference: without it no result can be had.",
    );
  return found;
};

export const whoIsThere = {
  code: "no-reference",
  heading: "load",
  fine: "There is a reference, and something to calibrate.",
  source,
  assess,
} as const satisfies GateCheck;
