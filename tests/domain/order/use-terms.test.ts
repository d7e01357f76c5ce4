import { describe, expect, it } from "vitest";
import { reviewOrder } from "@/lib/domain/order/contract-review";
import { OrderLineInput } from "@/lib/domain/order/schema";
import { draftOfUse, intervalLabels, noUseTerms, termsOfUseText } from "@/lib/domain/order/use-terms";
import { lineInput } from "../../support/orders";

const line = (more: object) => OrderLineInput.safeParse({ ...lineInput, ...more });
const termsOf = (more: object) => line(more).data?.useTerms;
const problems = (more: object) =>
  Object.fromEntries((line(more).error?.issues ?? []).map(({ path, message }) => [path.join("."), message]));

describe("the range of use in an order line", () => {
  it("may be left out, and then nothing is stated", () => {
    expect(termsOf({})).toEqual(noUseTerms);
    expect(termsOfUseText(noUseTerms, "C")).toBe("");
  });

  it("is kept in °C, typed in either unit, an interval as a difference", () => {
    expect(
      termsOf({
        useFrom: "300",
        useTo: "1000",
        maximum: "1050",
        intervalChoice: "agreed",
        largestInterval: "200",
      }),
    ).toEqual({
      useFromCelsius: 300,
      useToCelsius: 1000,
      maximumCelsius: 1050,
      largestIntervalCelsius: 200,
      intervalRule: "as agreed with the customer",
    });
    const fahrenheit = { temperatureUnit: "F", setpoints: "600 1200", tolerance: "none" };
    const terms = termsOf({
      ...fahrenheit,
      useFrom: "600",
      useTo: "1200",
      intervalChoice: "agreed",
      largestInterval: "250",
    });
    expect(terms?.useFromCelsius).toBe(2840 / 9);
    expect(terms?.largestIntervalCelsius).toBe(1250 / 9);
  });

  it("takes the interval of a rule set by its name, and says which stands from memory", () => {
    expect(termsOf({ intervalChoice: "bipm" })).toMatchObject({ largestIntervalCelsius: 100 });
    const ams = termsOf({ intervalChoice: "ams2750" });
    expect(ams?.largestIntervalCelsius).toBe(140);
    expect(ams?.intervalRule).toMatch(/from memory, to be confirmed/);
    expect(intervalLabels.ams2750).toMatch(/from memory, to be confirmed/);
    // What a customer reads names the set, and in each unit its own figure.
    expect(termsOfUseText(ams!, "C")).toBe("At most 140 °C between setpoints (AMS2750, edition as agreed).");
    const typed = { temperatureUnit: "F", setpoints: "600 850", tolerance: "none" };
    const inFahrenheit = termsOf({ ...typed, intervalChoice: "ams2750" })!;
    expect(inFahrenheit.largestIntervalCelsius).toBe(1250 / 9);
    expect(termsOfUseText(inFahrenheit, "F")).toBe(
      "At most 250 °F between setpoints (AMS2750, edition as agreed).",
    );
    expect(draftOfUse(inFahrenheit, "F").intervalChoice).toBe("ams2750");
  });

  it.each([
    [{ useFrom: "300" }, "useTo", /both ends/],
    [{ useTo: "300" }, "useFrom", /both ends/],
    [{ useFrom: "900", useTo: "900" }, "useTo", /ends above where it begins/],
    [{ useFrom: "about 300", useTo: "900" }, "useFrom", /one temperature as a number/],
    [{ maximum: "999" }, "maximum", /1000 °C lies above it/],
    [{ intervalChoice: "agreed" }, "largestInterval", /how far apart/],
    [{ intervalChoice: "agreed", largestInterval: "0" }, "largestInterval", /how far apart/],
  ])("refuses %o at its field", (more, field, message) => {
    expect(problems(more)).toEqual({ [field]: expect.stringMatching(message) });
  });

  it("comes back into its form as it was typed, and onto the page in words", () => {
    const typed = {
      useFrom: "600",
      useTo: "1200",
      maximum: "1300",
      intervalChoice: "agreed",
      largestInterval: "250",
    } as const;
    const terms = termsOf({ temperatureUnit: "F", setpoints: "600 1200", tolerance: "none", ...typed })!;
    expect(draftOfUse(terms, "F")).toEqual(typed);
    expect(draftOfUse(termsOf({ intervalChoice: "bipm" })!, "C")).toMatchObject({
      intervalChoice: "bipm",
      largestInterval: "",
    });
    expect(termsOfUseText(terms, "F")).toBe(
      "Used from 600 to 1200 °F. Nothing above 1300 °F without agreement. At most 250 °F between setpoints (as agreed with the customer).",
    );
  });

  it("is looked at by the contract review: setpoints that do not cover it are told", () => {
    const told = (more: object) => {
      const { quantity: _, construction: __, protection: ___, ...data } = line(more).data!;
      return reviewOrder(
        {
          state: "recorded",
          decisionRule: "none",
          decisionRuleAgreedBy: null,
          decisionRuleAgreedOn: null,
          lines: [{ ...data, position: 1, tolerance: "none" }],
        },
        [{ name: "F", minimumCelsius: 200, maximumCelsius: 1200 }],
      ).map(({ message }) => message);
    };
    expect(told({ useFrom: "300", useTo: "1000" })).toEqual([]);
    expect(told({ useFrom: "250", useTo: "1000" })[0]).toMatch(/do not cover the range of use/);
    expect(told({ useFrom: "300", useTo: "1001" })).toHaveLength(1);
  });
});
