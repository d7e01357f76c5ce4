import { describe, expect, it } from "vitest";
import { type ReviewedOrder, reviewOrder } from "@/lib/domain/order/contract-review";
import { decideDifferencesSettled, decideRaise, decideSettle } from "@/lib/domain/order/difference";
import { noMarks } from "@/lib/domain/order/line-marks";
import { LineOptions } from "@/lib/domain/order/options";
import { composeReviewAnswers, decideReviewAnswers, ReviewAnswers } from "@/lib/domain/order/review";
import { AcceptOrderInput } from "@/lib/domain/order/schema";
import { decideAmendment, decideTakeOver } from "@/lib/domain/order/transitions";
import { answers } from "../../support/orders";

describe("the answers of a review", () => {
  const away = { position: 2, marks: { ...noMarks, providerId: "p" } };
  it("fit an order whose lines leave the house only with the customer's approval", () => {
    const lines = [{ position: 1, marks: noMarks }, away];
    expect(decideReviewAnswers(lines, { externalProviders: "approved" })).toMatchObject({ ok: true });
    expect(decideReviewAnswers(lines, { externalProviders: "none" })).toMatchObject({
      refusal: {
        message: expect.stringContaining("Line 2"),
        fields: { externalProviders: expect.any(String) },
      },
    });
    expect(decideReviewAnswers([lines[0]!], { externalProviders: "none" })).toMatchObject({ ok: true });
  });

  it("are kept with their remarks and what was told", () => {
    const input = AcceptOrderInput.parse({ ...answers, number: "O-1", methodSuitableRemark: " suits " });
    const kept = composeReviewAnswers(input, ["told"]);
    expect(ReviewAnswers.parse(JSON.parse(JSON.stringify(kept)))).toEqual(kept);
    expect(kept).toMatchObject({
      methodSuitable: { answer: "yes", remark: "suits" },
      externalProviders: { answer: "none", remark: "" },
      toldCustomer: ["told"],
    });
  });
});

describe("findings on options and places", () => {
  const line: ReviewedOrder["lines"][number] = {
    position: 1,
    typeLetter: "K",
    temperatureUnit: "C",
    tolerance: "none",
    setpoints: [{ typed: "600", celsius: 600 }],
  };
  const furnaces = [{ name: "F", minimumCelsius: 300, maximumCelsius: 1200 }];
  const said = (more: Partial<ReviewedOrder["lines"][number]>) =>
    reviewOrder(
      {
        ...{
          state: "recorded",
          decisionRule: "none",
          decisionRuleAgreedBy: null,
          decisionRuleAgreedOn: null,
        },
        lines: [{ ...line, ...more }],
      },
      furnaces,
    ).map(({ kind, message }) => `${kind}: ${message}`);
  const table = LineOptions.parse({ correctionTable: { step: 10 } });

  it("want two setpoints for a table, and the customer told of what is done elsewhere", () => {
    expect(said({ options: LineOptions.parse({}), marks: noMarks })).toEqual([]);
    expect(said({ options: table })).toEqual([expect.stringMatching(/^missing: .*there is one alone/)]);
    expect(said({ options: table, setpoints: [...line.setpoints, { typed: "700", celsius: 700 }] })).toEqual(
      [],
    );
    expect(said({ marks: { ...noMarks, providerId: "p" } })).toEqual([
      expect.stringMatching(/^notice: .*subcontracted/),
    ]);
    expect(said({ marks: { ...noMarks, performedAt: "customer-site", siteAddress: "Works Road" } })).toEqual([
      expect.stringMatching(/^notice: .*Works Road/),
    ]);
  });
});

describe("differences", () => {
  const open = { id: "d", text: "1200 °C asked", isSettled: false };
  const settled = { ...open, isSettled: true };
  it("are raised while the order lives", () => {
    for (const state of ["requested", "recorded", "accepted"] as const)
      expect(decideRaise(state)).toMatchObject({ ok: true });
    for (const state of ["completed", "cancelled"] as const)
      expect(decideRaise(state)).toMatchObject({ refusal: { code: "wrong-state" } });
  });

  it("are settled once, and of this order", () => {
    expect(decideSettle([open], "d")).toMatchObject({ ok: true });
    expect(decideSettle([settled], "d")).toMatchObject({ refusal: { code: "changed-meanwhile" } });
    expect(decideSettle([open], "e")).toMatchObject({ refusal: { code: "not-found" } });
  });

  it("stop the acceptance while one is open", () => {
    expect(decideDifferencesSettled([], "accept")).toMatchObject({ ok: true });
    expect(decideDifferencesSettled([settled], "accept")).toMatchObject({ ok: true });
    expect(decideDifferencesSettled([settled, open], "accept")).toMatchObject({
      refusal: { message: expect.stringMatching(/“1200 °C asked”.*“Differences” of the order, then accept/) },
    });
    expect(decideDifferencesSettled([open, open], "change it", "O-1")).toMatchObject({
      refusal: { message: expect.stringMatching(/2 differences are.*of order O-1, then change it/) },
    });
  });
});

describe("who may write on an order", () => {
  it("follows its state", () => {
    expect(decideAmendment("recorded")).toMatchObject({ ok: true });
    expect(decideAmendment("accepted")).toMatchObject({
      refusal: { message: expect.stringContaining("Change it with a reason") },
    });
    expect(decideAmendment("requested")).toMatchObject({
      refusal: { message: expect.stringContaining("take it over first") },
    });
    expect(decideTakeOver("requested")).toMatchObject({ ok: true });
    for (const state of ["recorded", "accepted", "completed", "cancelled"] as const)
      expect(decideTakeOver(state)).toMatchObject({ refusal: { code: "wrong-state" } });
  });
});
