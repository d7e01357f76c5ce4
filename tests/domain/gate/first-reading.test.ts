import { describe, expect, it } from "vitest";
import { benchRows, readBenchRows } from "@/lib/domain/gate/bench-figures";
import { decideFirstReading } from "@/lib/domain/gate/decide-first-reading";
import { RecordBenchChecksInput } from "@/lib/domain/gate/schema";
import { standingReasons } from "@/lib/domain/gate/standing-reasons";

const at = (moment: string) => new Date(moment);
const passed = at("2026-10-14T22:00:00Z");
const first = (passedAt: Date | null, startedAt: string) => {
  const result = decideFirstReading({ number: "R-1" }, passedAt, at(startedAt));
  return result.ok ? result.value : result.refusal.message;
};

describe("the first reading of a run", () => {
  it("follows its gate within a day, half a day left to the scanner's clock", () => {
    expect(first(passed, "2026-10-14T22:10:00Z")).toBe("take");
    expect(first(passed, "2026-10-14T10:00:00Z")).toBe("take");
    expect(first(passed, "2026-10-15T22:00:00Z")).toBe("take");
  });

  it("is refused without the gate, from before it, and more than a day after", () => {
    expect(first(null, "2026-10-14T22:10:00Z")).toMatch(/has not passed its gate/);
    expect(first(passed, "2026-10-14T09:59:59Z")).toMatch(/before run R-1 passed its gate/);
    expect(first(passed, "2026-10-15T22:00:01Z")).toMatch(/Plan the run anew/);
  });
});

describe("bench checks", () => {
  const input = RecordBenchChecksInput.parse({
    run: "R-1",
    warmUpHours: 1.5,
    shortedZeroMicrovolt: -0.2,
    voltagePoint: { appliedMicrovolt: 10_000, readMicrovolt: 10_001 },
    channels: [{ channel: "101", microvolt: 0.1 }],
    junctions: [{ junction: "ICE-1", thermometer: "PRT-1", thermometerCelsius: 0.01 }],
  });
  const rows = benchRows(input, () => 0);

  it("come back as they were typed, each junction against what the run says of it", () => {
    expect(readBenchRows(rows)).toEqual({
      warmUpHours: 1.5,
      shortedZeroMicrovolt: -0.2,
      voltagePoint: { appliedMicrovolt: 10_000, readMicrovolt: 10_001 },
      channels: [{ channel: "101", microvolt: 0.1 }],
      junctions: [{ junction: "ICE-1", statedCelsius: 0, thermometer: "PRT-1", thermometerCelsius: 0.01 }],
    });
  });

  it("are nothing where nothing was recorded, and the last of a kind and channel counts", () => {
    expect(readBenchRows([])).toMatchObject({ warmUpHours: null, voltagePoint: null, channels: [] });
    const again = benchRows({ ...input, channels: [{ channel: "101", microvolt: 3 }] }, () => 0);
    expect(readBenchRows([...rows, ...again]).channels).toEqual([{ channel: "101", microvolt: 3 }]);
  });
});

describe("a reason", () => {
  const given = (code: string, subject: string, saidAt: string) => ({
    code,
    subject,
    reason: "because",
    reachesCertificate: true,
    saidAt: at(saidAt),
  });
  const standing = (
    code: string,
    subject: string,
    saidAt: string,
    checks = [check("2026-10-15T07:00:00Z")],
  ) => standingReasons([given(code, subject, saidAt)], checks, "2026-10-15").length === 1;
  const check = (checkedAt: string) => ({ kind: "channel-zero", channel: "101", checkedAt: at(checkedAt) });

  it("against a same-day check stands on its day, until the check is made again", () => {
    expect(standing("channel-zero", "101", "2026-10-15T08:00:00Z")).toBe(true);
    expect(standing("channel-zero", "101", "2026-10-15T06:00:00Z")).toBe(false);
    expect(standing("channel-zero", "102", "2026-10-15T06:00:00Z")).toBe(true);
    expect(standing("channel-zero", "101", "2026-10-14T08:00:00Z", [])).toBe(false);
    expect(standing("tips-warmed", "1", "2026-10-14T08:00:00Z")).toBe(false);
  });

  it("against what a sensor is stands until the run starts", () => {
    expect(standing("used-base-metal", "T-1", "2026-10-01T08:00:00Z")).toBe(true);
  });
});
