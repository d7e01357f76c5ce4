import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { loadEvidence } from "@/lib/data/run/load-evidence";
import { decideCalibration } from "@/lib/operations/calibration/decide";
import { recordCalibration } from "@/lib/operations/calibration/record";
import { setEquipmentState } from "@/lib/operations/equipment/set-state";
import { execute } from "@/lib/operations/execute";
import { approveProvider } from "@/lib/operations/provider/approve";
import { suspendProvider } from "@/lib/operations/provider/suspend";
import { createRun } from "@/lib/operations/run/create";
import { newRunView } from "@/lib/views/run/new-run";
import { acceptCalibration, calibrate, certificateOf } from "../../support/calibrate";
import { refusalOf } from "../../support/front-desk";
import { type CreateInput, fullRunInput } from "../../support/full-run";
import { suspect } from "../../support/in-service";
import { gateOf } from "../../support/pass-gate";
import {
  benchClock,
  inLaboratory,
  openRunBench,
  type RunBench,
  recordStandard,
} from "../../support/run-bench";

let bench: RunBench;
let input: CreateInput;
beforeAll(async () => {
  bench = await openRunBench();
  input = await fullRunInput(bench);
});
afterAll(() => bench.close());

const particulars = {
  kind: "voltmeter" as const,
  driftHalfWidthMicrovolt: 1,
  resolutionMicrovolt: 0.1,
  basis: "invented",
};
const findings = (expandedMicrovolt = 2) => ({
  kind: "voltmeter" as const,
  corrections: [],
  expandedMicrovolt,
  coverageFactor: 2,
  note: "",
});
const voltmeter = (tag: string, dueOn?: string) => recordStandard(bench, tag, particulars, findings(), dueOn);

/** The ground by its code, the same from the operation and on the screen; nothing is made. */
const groundOf = async (voltmeterId: string): Promise<string | undefined> => {
  const refusal = await refusalOf(
    execute(createRun, bench.technician, { ...input, voltmeterId }, benchClock),
  );
  expect(refusal.code).toBe("rule");
  expect(await inLaboratory((tx) => tx.run.count())).toBe(0);
  const { voltmeters, notOffered } = await newRunView(bench.technician, benchClock());
  expect(voltmeters.map(({ id }) => id)).not.toContain(voltmeterId);
  const ground = refusal.grounds?.voltmeterId;
  expect(notOffered.find(({ id }) => id === voltmeterId)).toMatchObject({
    ground,
    message: refusal.fields?.voltmeterId,
  });
  return ground;
};
/** A voltmeter in service whose first certificate was rejected: none that counts is left. */
const withoutCertificate = async (tag: string): Promise<string> => {
  const id = await voltmeter(tag);
  const [calibration] = await inLaboratory((tx) => tx.calibration.findMany({ where: { equipmentId: id } }));
  const rejection = { id: calibration!.id, decision: "rejected" as const, reason: "another instrument" };
  await execute(decideCalibration, bench.signatory, rejection, benchClock);
  return id;
};

describe("what cannot be chosen, on the screen and by the operation, by the code of its ground", () => {
  it("not in date on the day of the run", async () => {
    expect(await groundOf(await voltmeter("VM-LATE", "2026-10-14"))).toBe("not-in-date");
  });

  it("suspect, or out of service otherwise", async () => {
    const id = await voltmeter("VM-FELL");
    await suspect(bench.manager, id, benchClock);
    expect(await groundOf(id)).toBe("suspect");
    const { version } = await inLaboratory((tx) => tx.equipment.findUniqueOrThrow({ where: { id } }));
    const repair = { id, version, state: "under-repair" as const, reason: "sent away" };
    await execute(setEquipmentState, bench.manager, repair, benchClock);
    expect(await groundOf(id)).toBe("not-in-service");
  });

  it("rejected, or not accepted yet", async () => {
    const id = await withoutCertificate("VM-NEW");
    expect(await groundOf(id)).toBe("never-calibrated");
    const papers = { certificate: "C-NEW", itemSerial: "SN-VM-NEW", performedOn: "2026-09-01" };
    const waiting = certificateOf(id, { ...papers, dueOn: "2027-09-01", findings: findings() });
    const { id: calibration } = await execute(recordCalibration, bench.manager, waiting, benchClock);
    expect(await groundOf(id)).toBe("not-accepted");
    await acceptCalibration(bench.signatory, calibration, benchClock);
    const { voltmeters } = await newRunView(bench.technician, benchClock());
    expect(voltmeters.map(({ tag }) => tag)).toContain("VM-NEW");
  });

  it("of an issuer who is suspended, or was not approved on its day", async () => {
    const id = await voltmeter("VM-ISSUER");
    const issuer = await inLaboratory((tx) => tx.provider.findFirstOrThrow());
    const { version } = issuer;
    await execute(suspendProvider, bench.manager, { id: issuer.id, version, reason: "audit" }, benchClock);
    expect(await groundOf(id)).toBe("issuer-not-approved");
    const approval = { id: issuer.id, note: "invented", approvedUntil: "2028-12-31" };
    const approve = (
      given: number,
      approvedFrom: string,
      kinds: readonly ("reference" | "voltmeter" | "scanner" | "junction")[],
    ) =>
      execute(
        approveProvider,
        bench.manager,
        { ...approval, version: given, approvedFrom, scope: kinds.map((kind) => ({ kind })) },
        benchClock,
      );
    const all = ["reference", "voltmeter", "scanner", "junction"] as const;
    await approve(version + 1, "2026-03-01", all);
    expect(await groundOf(id)).toBe("issuer-not-approved");
    await approve(version + 2, "2025-01-01", ["reference"]);
    expect(await groundOf(id)).toBe("issuer-not-approved");
    await approve(version + 3, "2025-01-01", all);
  });

  it("a reference beyond the range its certificate states, although its points go further", async () => {
    const id = await recordStandard(
      bench,
      "REF-SHORT",
      {
        kind: "reference",
        type: "S",
        protection: "alumina-sheath",
        driftHalfWidthCelsius: 0.3,
        inhomogeneityRelativeHalfWidth: 0.0002,
        basis: "invented",
      },
      {
        kind: "reference",
        points: [
          { celsius: 250, deviationMicrovolt: 0 },
          { celsius: 1150, deviationMicrovolt: 0 },
        ],
        expanded: 0.3,
        coverageFactor: 2,
        unit: "celsius",
        note: "",
      },
    );
    const [first] = await inLaboratory((tx) => tx.calibration.findMany({ where: { equipmentId: id } }));
    const again = certificateOf(id, {
      certificate: "C-SHORT",
      itemSerial: "SN-REF-SHORT",
      performedOn: "2026-09-01",
      dueOn: "2027-09-01",
      findings: JSON.parse(first!.findings),
      fromCelsius: 300,
      toCelsius: 900,
    });
    await calibrate(bench, again, benchClock);
    const places = input.places.map((row, at) =>
      at === 0 ? { ...row, item: { kind: "reference" as const, tag: "REF-SHORT" } } : row,
    );
    const refusal = await refusalOf(execute(createRun, bench.technician, { ...input, places }, benchClock));
    expect(refusal.grounds?.setpoints).toBe("reference-range");
    expect(refusal.fields?.setpoints).toMatch(/REF-SHORT: its certificate holds from 300 to 900 °C/);
  });
});

describe("a run keeps what it was made on", () => {
  const later = () => new Date("2026-10-15T09:00:00Z");
  const used = async (run: string) => {
    const found = await inLaboratory((tx) => loadEvidence(tx, run));
    return found?.evidence.voltmeter.calibration.certificate;
  };

  it("whatever is recorded, accepted or rejected afterwards; the gate then says so", async () => {
    const { number } = await execute(createRun, bench.technician, input, benchClock);
    expect(await used(number)).toBe("C-VM-01");
    // Performed before the run's day, accepted after it was made: it counts from the next run on.
    const papers = { certificate: "C-LATER", itemSerial: "SN-VM-01", performedOn: "2026-10-01" };
    const followed = certificateOf(bench.voltmeterId, {
      ...papers,
      dueOn: "2027-10-01",
      findings: findings(7),
    });
    const id = await calibrate(bench, followed, later);
    expect(await used(number)).toBe("C-VM-01");
    const [old] = await inLaboratory((tx) => tx.calibration.findMany({ where: { certificate: "C-VM-01" } }));
    const rejection = { id: old!.id, decision: "rejected" as const, reason: "its meter was read wrongly" };
    await execute(decideCalibration, bench.signatory, rejection, later);
    expect(await used(number)).toBe("C-VM-01");
    const { headings } = await gateOf(number, later);
    const rows = headings.flatMap(({ rows: all }) => all);
    expect(rows.find(({ code }) => code === "voltmeter-in-date")).toMatchObject({ severity: "refuse" });
    expect(await inLaboratory((tx) => tx.calibrationDecision.count({ where: { calibrationId: id } }))).toBe(
      1,
    );
  });
});
