import { expect, it } from "vitest";
import type { MeasuredPoint } from "@/lib/domain/evidence/evaluation";
import { reviewExceptions } from "@/lib/domain/review/exceptions";
import { measuredPoint } from "../../support/evaluated-point";

const point = (sensor: string, change: Partial<MeasuredPoint> = {}): MeasuredPoint => ({
  ...measuredPoint({ sensor, setpoint: "SP1", type: "K", celsius: 600, error: 0.4, rule: "guarded" }),
  ...change,
});
const of = (points: Parameters<typeof reviewExceptions>[0]["points"], more = {}) =>
  reviewExceptions({ points, findings: [], hasTypedReadings: false, movedWindowsCelsius: [], ...more });
const conformity = (state: MeasuredPoint["conformity"]["state"]) => ({
  conformity: { ...point("x").conformity, state },
});

it("finds nothing where everything passes and the references agree", () => {
  expect(of([point("A"), point("B")])).toEqual([]);
});

it("tells what was set aside at the gate, and not what was met there", () => {
  const row = {
    code: "used-base-metal",
    subjects: ["A"],
    reason: "used base metal.",
    given: "agreed by N. North",
  };
  const setAside = [
    row,
    { code: "furnace-range", subjects: [], reason: "The furnace reaches every setpoint.", given: null },
  ];
  const places = [{ kind: "sensor", tag: "A", place: "1", channel: "101", junction: "J-1" }];
  expect(of([point("A"), point("B")], { setAside, places })).toEqual([
    {
      weight: 65,
      kind: "gate",
      subject: "A",
      point: { sensor: "A", setpoint: "SP1" },
      text: "set aside at the gate: used base metal. Given: agreed by N. North",
    },
  ]);
  expect(of([], { setAside: [{ ...row, subjects: [] }] })[0]?.subject).toBe("Gate");
});

it("puts the gravest first: fail, finding, not measured, conditional pass, references, window, typed", () => {
  const found = of(
    [
      point("A", conformity("conditional-pass")),
      {
        state: "not-reached",
        sensor: "B",
        setpoint: "SP1",
        type: "K",
        nominalCelsius: 600,
        reason: "furnace tripped",
      },
      point("C", conformity("fail")),
      point("D", {
        setpoint: "SP2",
        references: [
          { reference: "R-S1", emfMicrovolt: 1, deviationMicrovolt: 0, celsius: 600 },
          { reference: "R-S2", emfMicrovolt: 1, deviationMicrovolt: 0, celsius: 600.7 },
        ],
      }),
    ],
    {
      findings: [{ code: "channels-swapped", path: "load", message: "swapped" }],
      hasTypedReadings: true,
      movedWindowsCelsius: [600],
    },
  );
  expect(found.map(({ kind }) => kind)).toEqual([
    "conformity",
    "finding",
    "not-measured",
    "conformity",
    "references-differ",
    "window",
    "typed",
  ]);
  expect(found[0]).toMatchObject({ subject: "C at 600 °C", point: { sensor: "C", setpoint: "SP1" } });
});

it("names an error that passes but uses most of the tolerance, and a spread once for all sensors", () => {
  const near = of([point("A", { errorCelsius: -2 })]);
  expect(near).toMatchObject([{ kind: "large-error", text: "error uses 83 % of the tolerance" }]);
  const references = [
    { reference: "R-S1", emfMicrovolt: 1, deviationMicrovolt: 0, celsius: 600 },
    { reference: "R-S2", emfMicrovolt: 1, deviationMicrovolt: 0, celsius: 600.61 },
  ];
  expect(of([point("A", { references }), point("B", { references })])).toMatchObject([
    {
      ...{ kind: "references-differ", text: "the references differ by 0.61 °C" },
      ...{ point: { sensor: "A", setpoint: "SP1" }, others: [{ sensor: "B", setpoint: "SP1" }] },
    },
  ]);
  // What it is held against is said beside it, where a window was judged by it.
  const agreements = [
    { celsius: 700, limitCelsius: 0.4 },
    { celsius: 600, limitCelsius: 0.95 },
  ];
  expect(of([point("A", { references })], { agreements })[0]?.text).toBe(
    "the references differ by 0.61 °C; at most 0.950 °C is allowed (U of the difference)",
  );
  // A window is one for all sensors: each of them is opened.
  expect(of([point("A"), point("B")], { movedWindowsCelsius: [600] })).toMatchObject([
    { kind: "window", point: { sensor: "A" }, others: [{ sensor: "B" }] },
  ]);
});
