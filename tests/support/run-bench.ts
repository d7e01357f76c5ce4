import { connect } from "@/lib/commands/postgres/connect";
import { inScope, type Tx } from "@/lib/data/in-scope";
import type { Findings } from "@/lib/domain/calibration/findings";
import type { Particulars } from "@/lib/domain/equipment/particulars";
import type { Actor } from "@/lib/domain/staff/actor";
import { recordEquipment } from "@/lib/operations/equipment/record";
import { execute } from "@/lib/operations/execute";
import { decideCharacterisation } from "@/lib/operations/furnace/decide-characterisation";
import { recordFurnace } from "@/lib/operations/furnace/record";
import { recordCharacterisation } from "@/lib/operations/furnace/record-characterisation";
import { recordConfiguration } from "@/lib/operations/furnace/record-configuration";
import { changeDraft } from "@/lib/operations/procedure/change-draft";
import { installFounding } from "@/lib/operations/procedure/install";
import { makeCurrent } from "@/lib/operations/procedure/make-current";
import { recordProcedure } from "@/lib/operations/procedure/record";
import { figures, inputs, references, sensorInputs } from "@/lib/station/simulation/scenario";
import { approveIssuer, calibrate, certificateOf } from "./calibrate";
import { type FrontDesk, openFrontDesk } from "./front-desk";
import { furnaceInService, inService, wholeRecord } from "./in-service";

/** The day on which runs of these tests are measured and everything about them is in date. */
export const benchClock = () => new Date("2026-10-15T08:00:00Z");

export type RunBench = FrontDesk & {
  readonly manager: Actor;
  readonly configurationId: string;
  readonly voltmeterId: string;
  readonly scannerId: string;
  readonly junctionId: string;
  /** Tag of the thermometer that junctions are checked with. */
  readonly thermometer: string;
};

const note = "invented";

/** Equipment with one calibration, in date on the bench's day; both through the operations people use. */
export const recordStandard = async (
  who: { readonly manager: Actor; readonly signatory: Actor },
  tag: string,
  particulars: Particulars,
  findings: Findings,
  dueOn = "2027-02-18",
  serial = `SN-${tag}`,
): Promise<string> => {
  const { id } = await execute(
    recordEquipment,
    who.manager,
    { tag, maker: "Invented Works", model: "M", serial, particulars, ...wholeRecord },
    benchClock,
  );
  await inService(who.manager, id, benchClock);
  const papers = { certificate: `C-${tag}`, itemSerial: serial, performedOn: "2026-02-18", dueOn, findings };
  await calibrate(who, certificateOf(id, papers), benchClock);
  return id;
};

export const recordBareTube = async (
  who: { readonly manager: Actor; readonly signatory: Actor },
  tag: string,
  uniformityHalfWidthCelsius: number,
  validUntil = "2027-03-10",
): Promise<string> => {
  const { id: furnaceId } = await execute(
    recordFurnace,
    who.manager,
    {
      tag,
      name: "Tube furnace",
      maker: "Invented Works",
      serial: tag,
      minimumCelsius: 200,
      maximumCelsius: 1200,
      boreMillimetre: 60,
      lengthMillimetre: 1000,
    },
    benchClock,
  );
  await furnaceInService(who.manager, furnaceId, benchClock);
  const { id } = await execute(
    recordConfiguration,
    who.manager,
    { furnaceId, name: "Bare tube", kind: "bare-tube", places: 12, immersionMillimetre: 400 },
    benchClock,
  );
  const characterised = await execute(
    recordCharacterisation,
    who.manager,
    {
      configurationId: id,
      performedOn: "2026-03-10",
      validUntil,
      uniformityHalfWidthCelsius,
      statement: "Half range over 40 mm, 300 °C to 1100 °C (invented)",
    },
    benchClock,
  );
  const acceptance = { id: characterised.id, decision: "accepted" as const };
  await execute(decideCharacterisation, who.signatory, acceptance, benchClock);
  return id;
};

/** The scenario's own budget as a procedure: drafted by the quality manager, made current by the signatory. */
const tellProcedure = async (who: { readonly manager: Actor; readonly signatory: Actor }): Promise<void> => {
  await execute(installFounding, { kind: "system", name: "test" }, {}, benchClock);
  const named = { key: "demonstration", title: "Demonstration", copyOf: "tube-furnace" };
  const { id } = await execute(recordProcedure, who.manager, named, benchClock);
  const draft = {
    id,
    version: 1,
    budgetText: JSON.stringify({
      procedure: "Demonstration",
      origin: "simulated",
      referenceRepeatability: inputs.referenceRepeatability,
      sensors: { K: sensorInputs("K"), N: sensorInputs("N"), S: sensorInputs("S") },
    }),
    change: "First revision.",
    verification: "Against simulated furnaces of known truth.",
  };
  await execute(changeDraft, who.manager, draft, benchClock);
  await execute(makeCurrent, who.signatory, { id, version: 2 }, benchClock);
};

/** The front desk, a quality manager, and the scenario's furnace, references and instruments. */
export const openRunBench = async (): Promise<RunBench> => {
  const desk = await openFrontDesk();
  const admin = await connect(desk.database.adminUrl);
  const { rows } = await admin.query<{ id: string }>(
    "INSERT INTO person (email, name, password_hash) VALUES ('q@example.org', 'Quinn Quality', 'x') RETURNING id",
  );
  const personId = rows[0]!.id;
  await admin.query("INSERT INTO person_role VALUES ($1, 'quality-manager')", [personId]);
  await admin.end();
  const manager: Actor = { kind: "staff", personId, name: "Quinn Quality", roles: ["quality-manager"] };
  const who = { manager, signatory: desk.signatory };
  await tellProcedure(who);
  await approveIssuer(manager, benchClock);
  for (const reference of references)
    await recordStandard(
      who,
      reference.id,
      {
        kind: "reference",
        type: "S",
        protection: "alumina-sheath",
        driftHalfWidthCelsius: figures.referenceDriftCelsius,
        inhomogeneityRelativeHalfWidth: figures.referenceInhomogeneity,
        basis: note,
      },
      {
        kind: "reference",
        points: reference.deviations.map(([celsius, deviationMicrovolt]) => ({
          celsius,
          deviationMicrovolt,
        })),
        expanded: figures.referenceExpandedCelsius,
        coverageFactor: 2,
        unit: "celsius",
        note,
      },
    );
  await recordStandard(
    who,
    "PRT-01",
    { kind: "thermometer", element: "industrial", driftHalfWidthCelsius: 0.01, basis: note },
    {
      kind: "thermometer",
      curve: { form: "callendar-van-dusen", zeroOhm: 100, a: 3.9083e-3, b: -5.775e-7, c: 0 },
      fromCelsius: -5,
      toCelsius: 60,
      expandedCelsius: 0.01,
      coverageFactor: 2,
      note,
    },
  );
  return {
    ...desk,
    manager,
    thermometer: "PRT-01",
    configurationId: await recordBareTube(who, "FUR-1", figures.uniformityCelsius),
    voltmeterId: await recordStandard(
      who,
      "VM-01",
      { kind: "voltmeter", driftHalfWidthMicrovolt: 1, resolutionMicrovolt: 0.1, basis: note },
      { kind: "voltmeter", corrections: [], expandedMicrovolt: 2, coverageFactor: 2, note },
    ),
    scannerId: await recordStandard(
      who,
      "SC-01",
      { kind: "scanner", parasiticHalfWidthMicrovolt: 1, basis: note },
      { kind: "scanner", parasiticHalfWidthMicrovolt: 1, note },
    ),
    junctionId: await recordStandard(
      who,
      "ICE-01",
      { kind: "junction", celsius: 0, halfWidthCelsius: 0.05, basis: note },
      { kind: "junction", celsius: 0, expandedCelsius: 0.04, coverageFactor: 2, note },
    ),
  };
};

export const inLaboratory = <T>(work: (tx: Tx) => Promise<T>): Promise<T> =>
  inScope({ kind: "laboratory" }, work);
