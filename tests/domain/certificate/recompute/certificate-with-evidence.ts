import { composeCertificate } from "@/lib/domain/certificate/compose-certificate";
import type { EvidenceFile } from "@/lib/domain/certificate/evidence-file/evidence-file";
import { evaluateEvidence } from "@/lib/domain/evidence/evaluate";
import { Evidence } from "@/lib/domain/evidence/schema";
import { demand } from "@/lib/domain/refusal";
import { askFunction, lineThroughZero } from "@/tests/domain/evidence/ask-function";
import { inventedParts } from "@/tests/support/certificate-parts";

const over = [300, 500, 700, 900];
const asked = askFunction({
  over,
  choice: { ...lineThroughZero, table: { unit: "celsius", step: 100 } },
});
export const evidence = Evidence.parse({
  ...asked,
  states: [{ sensor: "X1", setpoint: "500", state: "invalid", reason: "open for a while" }],
});
const outcome = evaluateEvidence(evidence);
if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
const { points, functions } = outcome.evaluation;
/** An invented certificate, composed from what its evidence gives, and that evidence; of its blocks nothing is in it. */
export const base = inventedParts();
export const number = "C-2026-0001";

/** As it would be signed off: composed from what the evidence gives. */
export const content = demand(
  composeCertificate(
    {
      ...base,
      order: {
        ...base.order,
        temperatureUnit: "C",
        setpoints: over.map((celsius) => ({ typed: `${celsius}`, celsius })),
      },
      sensor: { ...base.sensor, tag: "X1", typeLetter: "N" },
      points,
      deviationFunction: { ok: true, value: functions[0]! },
    },
    { number, issuedOn: "2026-06-02", signatory: { name: "Sam Signer", role: "Signatory" }, exception: "" },
  ),
);
export const file: EvidenceFile = {
  format: "emfolio-certificate-evidence",
  version: 1,
  certificate: number,
  parts: [
    {
      ...{
        items: [{ tag: "X1", set: "as-received" }],
        run: content.run.number,
        evaluation: content.evidence.evaluation,
      },
      ...{ engineVersion: "1", inputsDigest: content.evidence.inputsDigest, evidence },
      ...{ blocksDigest: "0".repeat(64), blocks: [] },
    },
  ],
};
