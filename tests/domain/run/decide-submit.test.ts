import { describe, expect, it } from "vitest";
import { decideSubmit, type SubmitFacts } from "@/lib/domain/run/decide-submit";

const facts: SubmitFacts = {
  run: { number: "R-1", state: "measuring" },
  tips: [{ place: "1", check: { riseMicrovolt: 40, onlyThisChannel: true } }],
  tipCheckReason: "",
  openSetpointsCelsius: [],
  evaluation: "current",
};
const said = (more: Partial<SubmitFacts>) => {
  const result = decideSubmit({ ...facts, ...more });
  return result.ok
    ? "submit"
    : `${result.refusal.message} ${Object.values(result.refusal.fields ?? {}).join(" ")}`;
};

describe("submitting a run", () => {
  it("goes through when all is there, also after a return", () => {
    expect(said({})).toBe("submit");
    expect(said({ run: { number: "R-1", state: "returned" } })).toBe("submit");
  });

  it.each(["planned", "submitted", "signed-off"])("is refused from %s", (state) => {
    expect(said({ run: { number: "R-1", state } })).toMatch(/cannot be submitted now/);
  });

  it("is refused with a setpoint undecided, without evaluation, and with an outdated one", () => {
    expect(said({ openSetpointsCelsius: [900] })).toMatch(/900 °C/);
    expect(said({ evaluation: "none" })).toMatch(/not evaluated/);
    expect(said({ evaluation: "outdated" })).toMatch(/Evaluate again/);
  });

  it("wants every tip, or the reason why not", () => {
    const tips = [{ place: "4", check: null }];
    expect(said({ tips })).toMatch(/place 4 \(not done\)/);
    expect(said({ tips, tipCheckReason: "one sensor only" })).toBe("submit");
    expect(said({ tips: [{ place: "4", check: { riseMicrovolt: 19, onlyThisChannel: true } }] })).toMatch(
      /rise too small/,
    );
  });

  it("takes no reason for wiring in doubt", () => {
    const tips = [{ place: "4", check: { riseMicrovolt: 90, onlyThisChannel: false } }];
    expect(said({ tips, tipCheckReason: "surely fine" })).toMatch(
      /other channels moved: the wiring is in doubt/,
    );
  });
});
