"use server";
import { overrideGate } from "@/lib/operations/gate/override";
import { passGate } from "@/lib/operations/gate/pass";
import { recordBenchChecks } from "@/lib/operations/gate/record-bench-checks";
import { formAction } from "@/lib/web/form-action";
import { list, optionalNumber, parseDecimal, rows, text } from "@/lib/web/form-fields";
import type { FormState } from "@/lib/web/form-state";

const optionalFigure = (typed: string | undefined) => (typed ? parseDecimal(typed) : undefined);

const voltagePoint = (data: FormData) => {
  const appliedMicrovolt = optionalNumber(data, "voltagePoint.appliedMicrovolt");
  const readMicrovolt = optionalNumber(data, "voltagePoint.readMicrovolt");
  return appliedMicrovolt === undefined && readMicrovolt === undefined
    ? undefined
    : { appliedMicrovolt, readMicrovolt };
};

const check = formAction(recordBenchChecks, {
  parse: (data) => ({
    run: text(data, "run"),
    warmUpHours: optionalNumber(data, "warmUpHours"),
    shortedZeroMicrovolt: optionalNumber(data, "shortedZeroMicrovolt"),
    voltagePoint: voltagePoint(data),
    channels: rows(data, "channels", ["channel", "microvolt"]).map(({ channel, microvolt }) => ({
      channel,
      microvolt: optionalFigure(microvolt),
    })),
    junctions: rows(data, "junctions", ["junction", "thermometer", "thermometerCelsius"]).map(
      ({ junction, thermometer, thermometerCelsius }) => ({
        junction,
        thermometer,
        thermometerCelsius: optionalFigure(thermometerCelsius),
      }),
    ),
  }),
  done: ({ checks }) => `${checks} check${checks === 1 ? "" : "s"} recorded.`,
});
export const benchChecksAction = async (state: FormState, data: FormData) => check(state, data);

const override = formAction(overrideGate, {
  parse: (data) => ({
    run: text(data, "run"),
    code: text(data, "code"),
    subjects: list(data, "subjects"),
    reason: text(data, "reason"),
  }),
  done: ({ reachesCertificate }) =>
    reachesCertificate ? "Recorded; it stands on the certificate." : "Recorded.",
});
export const overrideGateAction = async (state: FormState, data: FormData) => override(state, data);

const pass = formAction(passGate, {
  parse: (data) => ({ run: text(data, "run") }),
  done: ({ number }) => ({ redirect: `/runs/${number}/readings` }),
});
export const passGateAction = async (state: FormState, data: FormData) => pass(state, data);
