import { describe, expect, it } from "vitest";
import { catalogue } from "@/lib/domain/certificate/catalogue/catalogue";
import { settle } from "@/lib/domain/certificate/catalogue/settle";
import { roomCondition, roomDeviation, roomFiguresOf } from "@/lib/domain/certificate/compose-room";
import { defaultGatePolicy } from "@/lib/domain/gate/default-policy";
import { demand } from "@/lib/domain/refusal";
import { decideRoom } from "@/lib/domain/run/decide-room";
import { outsideLimits, roomFigures } from "@/lib/domain/run/room-figures";
import { roomOf } from "@/lib/domain/run/room-of";

const findings = {
  ...{
    kind: "ambient" as const,
    correctionCelsius: -0.1,
    expandedCelsius: 0.3,
    coverageFactor: 2,
    note: "invented",
  },
  humidity: { correctionPercent: 1.5, expandedPercent: 3 },
} as const;
const limits = defaultGatePolicy.room;
const told = (celsius: number, percent?: number, given: typeof limits = limits) =>
  roomFigures({ celsius, percent }, { tag: "TH-01", certificate: "C-1", findings }, given);
const said = (of: readonly unknown[]) => {
  const { value, translations } = demand(
    settle<readonly string[]>(of as never, { catalogue, further: ["de"] }),
  );
  return [value, value.map((sentence) => translations[0]?.texts[sentence])];
};

describe("the room of a run", () => {
  it("is what was shown with the correction of the certificate, and limits as they were then", () => {
    expect(told(23.2, 39.5)).toMatchObject({
      ...{ indicatedCelsius: 23.2, celsius: 23.1, expandedCelsius: 0.3, limits },
      humidity: { indicatedPercent: 39.5, percent: 41, expandedPercent: 3 },
    });
    expect(told(23.2)).not.toHaveProperty("humidity");
  });

  it("is outside where the corrected figure is, on either side", () => {
    expect([outsideLimits(told(18.1)), outsideLimits(told(28.1)), outsideLimits(told(23, 68.5))]).toEqual([
      ...[null, null, null],
    ]);
    expect(outsideLimits(told(18))).toBe("17.9 °C, outside 18 °C to 28 °C");
    expect(outsideLimits(told(28.2, 68.6))).toBe(
      "28.1 °C, outside 18 °C to 28 °C; 70.1 % relative humidity, outside 20 % to 70 %",
    );
    const { limits: _, ...unlimited } = told(40);
    expect(outsideLimits(unlimited)).toBeNull();
  });

  it("stands by the last record of its start and of its end", () => {
    const row = (channel: string, celsius: number, kind = "ambient") => ({
      ...{ kind, channel, figures: JSON.stringify(told(celsius)) },
    });
    const rows = [row("start", 20), row("end", 24), row("start", 21), row("", 1, "warm-up")];
    expect(roomOf(rows).map(({ celsius }) => celsius)).toEqual([20.9, 23.9]);
  });

  it("stands on the certificate from the lowest to the highest, in each language; and says where it was outside", () => {
    expect(said(roomCondition([told(23.7, 39.5), told(23.2, 39.5)]))).toEqual([
      [
        "Room during the measurement: 23.1 °C to 23.6 °C, 41 % relative humidity; by TH-01, U of its calibration 0.3 °C, 3 % (k = 2).",
      ],
      [
        "Raum während der Messung: 23.1 °C bis 23.6 °C, 41 % relative Luftfeuchte; mit TH-01, U von dessen Kalibrierung 0.3 °C, 3 % (k = 2).",
      ],
    ]);
    expect(said(roomDeviation([told(23), told(29)]))[0]).toEqual([
      "During the measurement the room was outside the limits of the procedure, 18 °C to 28 °C, 20 % to 70 % relative humidity: 22.9 °C to 28.9 °C.",
    ]);
    expect(roomFiguresOf([told(23.7, 39.5), told(23.2, 39.5)])).toEqual({
      room: { celsius: ["23.1", "23.6"], percent: ["41"] },
    });
    expect(roomFiguresOf([told(23.2)])).toEqual({ room: { celsius: ["23.1"] } });
    expect([roomCondition([]), roomDeviation([told(23)]), roomFiguresOf([])]).toEqual([[], [], {}]);
  });

  it("is recorded while the run is the technician's, its end once it began, humidity by what tells it", () => {
    const begun = { number: "R-1", state: "measuring", startedAt: new Date(0) };
    const good = { tag: "TH-01", findings, problem: null };
    const first = { isRecorded: false, isCertified: false };
    const refused = (
      run: Parameters<typeof decideRoom>[0],
      asked: Omit<Parameters<typeof decideRoom>[1], "reason"> & { readonly reason?: string },
      instrument: Parameters<typeof decideRoom>[2],
      before = first,
    ) => {
      const result = decideRoom(run, { reason: "", ...asked }, instrument, before);
      return result.ok ? null : [result.refusal.code, ...Object.keys(result.refusal.fields ?? {})];
    };
    const start = { moment: "start" } as const;
    const planned = { ...begun, state: "planned", startedAt: null };
    expect(refused(planned, start, good)).toBeNull();
    const again = { ...first, isRecorded: true };
    expect(refused(begun, start, good, again)).toEqual(["invalid", "reason"]);
    expect(refused(begun, { ...start, reason: "door was open" }, good, again)).toBeNull();
    const certified = { isRecorded: true, isCertified: true };
    expect(refused(begun, { ...start, reason: "door was open" }, good, certified)).toEqual([
      "rule",
      "moment",
    ]);
    expect(refused(begun, start, good, { ...certified, isRecorded: false })).toBeNull();
    expect(refused(planned, { moment: "end" }, good)).toEqual(["wrong-state", "moment"]);
    expect(refused({ ...begun, state: "submitted" }, start, good)).toEqual(["wrong-state"]);
    expect(refused(begun, start, { ...good, problem: "was due" })).toEqual(["rule", "instrument"]);
    expect(refused(begun, start, { ...good, findings: null })).toEqual(["rule", "instrument"]);
    expect(refused(begun, { moment: "end", percent: 40 }, { ...good, findings: {} })).toEqual([
      "rule",
      "percent",
    ]);
  });
});
