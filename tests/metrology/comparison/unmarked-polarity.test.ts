import { expect, it } from "vitest";
import { averagePolarity } from "@/lib/metrology/comparison/average-polarity";
import { resultOf } from "../result-of";

it("takes no notice of readings that are marked neither forward nor reversed", () => {
  // 0 stands for a reading taken while the switch moved; its value would spoil mean and slope alike.
  const marked = { seconds: [0, 10, 20, 30], microvolts: [5, -5.1, 5.2, -5.3], polarity: [1, -1, 1, -1] };
  const withSwitching = {
    seconds: [0, 5, 10, 20, 30],
    microvolts: [5, 900, -5.1, 5.2, -5.3],
    polarity: [1, 0, -1, 1, -1],
  };
  expect(resultOf(averagePolarity(withSwitching))).toEqual(resultOf(averagePolarity(marked)));
});
