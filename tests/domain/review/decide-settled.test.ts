import { expect, it } from "vitest";
import { decideSettled, type RemarkStanding } from "@/lib/domain/review/decide-settled";

const remark: RemarkStanding = {
  sensor: "T-1",
  setpoint: "600 °C",
  text: "Why so far from the last one?",
  isSettled: false,
};

it("stops the sensor whose remark is open, and no other", () => {
  expect(decideSettled([remark], ["T-1"])).toMatchObject({
    ok: false,
    refusal: {
      code: "rule",
      message: expect.stringContaining(
        "T-1 at 600 °C is not settled: “Why so far from the last one?”. Nothing",
      ),
    },
  });
  expect(decideSettled([remark], ["T-2"])).toEqual({ ok: true, value: null });
  expect(decideSettled([{ ...remark, isSettled: true }], ["T-1"])).toEqual({ ok: true, value: null });
});

it("stops every sensor for a remark on the run, counts the others and shortens a long one", () => {
  const ofRun = { ...remark, sensor: null, setpoint: null, text: "x".repeat(200) };
  const refused = decideSettled([ofRun, { ...remark, setpoint: null }], ["T-1"]);
  expect(refused).toMatchObject({
    refusal: { message: expect.stringMatching(/remark on the run is not settled: “x{80}…”, and 1 more\./) },
  });
  expect(decideSettled([{ ...remark, setpoint: null }], ["T-1"])).toMatchObject({
    refusal: { message: expect.stringContaining("remark on T-1 is") },
  });
});
