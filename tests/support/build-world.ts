import { inScope, type Tx } from "@/lib/data/in-scope";
import type { Actor } from "@/lib/domain/staff/actor";
import { customerRoles, type Role } from "@/lib/domain/staff/roles";
import { furnaceRow, inServiceRow } from "./in-service";
import { signatoryRows } from "./signatory";

/** An invented laboratory with its people, two customers and its equipment, written row by row. */

const person = async (tx: Tx, name: string, roles: readonly Role[], customerId: string | null = null) => {
  const email = `${name.toLowerCase().replaceAll(" ", ".")}@example.test`;
  const row = await tx.person.create({ data: { email, name, passwordHash: "none", customerId } });
  await tx.personRole.createMany({ data: roles.map((role) => ({ personId: row.id, role })) });
  return (
    customerId
      ? { kind: "customer", personId: row.id, name, roles, customerId }
      : { kind: "staff", personId: row.id, name, roles }
  ) as Actor & { personId: string };
};

/** With all that signing takes, as somebody who has just signed. */
const signing = async (tx: Tx, actor: Actor & { personId: string }, grantedById: string) => {
  const sessionId = await signatoryRows(tx, actor.personId, grantedById);
  return { ...actor, sessionId } as typeof actor & { sessionId: string };
};

const customer = (tx: Tx, name: string) =>
  tx.customer.create({
    data: {
      name,
      addressLines: "1 Invented Lane\nNowhere",
      contactName: "Lee Buyer",
      email: "buyer@example.test",
    },
  });

type Kind = "reference" | "voltmeter" | "scanner" | "junction";
const particulars = {
  reference: {
    kind: "reference",
    type: "S",
    protection: "alumina-sheath",
    driftHalfWidthCelsius: 0.25,
    inhomogeneityRelativeHalfWidth: 0.0002,
    basis: "invented",
  },
  voltmeter: { kind: "voltmeter", driftHalfWidthMicrovolt: 0.5, resolutionMicrovolt: 0.1, basis: "invented" },
  scanner: { kind: "scanner", parasiticHalfWidthMicrovolt: 2, basis: "invented" },
  junction: { kind: "junction", celsius: 0, halfWidthCelsius: 0.1, basis: "invented" },
} as const;
const findings = {
  reference: {
    kind: "reference",
    points: [
      { celsius: 300, deviationMicrovolt: -3 },
      { celsius: 1100, deviationMicrovolt: -9 },
    ],
    expanded: 0.3,
    coverageFactor: 2,
    unit: "celsius",
  },
  voltmeter: { kind: "voltmeter", corrections: [], expandedMicrovolt: 2, coverageFactor: 2 },
  scanner: { kind: "scanner", parasiticHalfWidthMicrovolt: 2 },
  junction: { kind: "junction", celsius: 0, expandedCelsius: 0.1, coverageFactor: 2 },
} as const;

const equipment = async (tx: Tx, kind: Kind, tag: string, decidedById: string) => {
  const row = await tx.equipment.create({
    data: {
      tag,
      kind,
      maker: "Invented Works",
      model: `M-${kind}`,
      serial: `SN-${tag}`,
      firmware: "none",
      location: "Bench 1, invented",
      receivedOn: new Date("2026-01-05"),
      calibrationIntervalMonths: 12,
      requirement: JSON.stringify({ largestExpanded: 100, unit: "microvolt" }),
      particulars: JSON.stringify(particulars[kind]),
    },
  });
  await inServiceRow(tx, row.id, decidedById);
  const calibration = await tx.calibration.create({
    data: {
      equipmentId: row.id,
      itemSerial: row.serial,
      certificate: `CAL-${tag}`,
      issuer: "Invented National Institute",
      accreditation: kind === "reference" ? "" : "INV 0001",
      route: kind === "reference" ? "nmi" : "accredited",
      performedOn: new Date("2026-01-10"),
      dueOn: new Date("2027-01-10"),
      findings: JSON.stringify(findings[kind]),
      recordedAt: new Date("2026-01-12T08:00:00Z"),
    },
  });
  await tx.calibrationDecision.create({
    data: {
      calibrationId: calibration.id,
      decision: "accepted",
      checks: "[]",
      decidedById,
      decidedAt: new Date("2026-01-13T08:00:00Z"),
    },
  });
  return row;
};

const furnace = async (tx: Tx, people: { readonly technician: string; readonly quality: string }) => {
  const row = await tx.furnace.create({
    data: {
      tag: "F-1",
      equipmentId: await furnaceRow(tx, "F-1", people.technician),
      name: "Tube furnace",
      maker: "Invented Works",
      serial: "F1",
      minimumCelsius: 200,
      maximumCelsius: 1200,
      boreMillimetre: 40,
      lengthMillimetre: 900,
    },
  });
  const configuration = await tx.furnaceConfiguration.create({
    data: {
      furnaceId: row.id,
      name: "Block of six",
      kind: "equalising-block",
      places: 60,
      immersionMillimetre: 300,
    },
  });
  const characterisation = await tx.characterisation.create({
    data: {
      configurationId: configuration.id,
      performedOn: new Date("2026-02-01"),
      validUntil: new Date("2027-02-01"),
      uniformityHalfWidthCelsius: 1,
      statement: "± 1.0 °C over 50 mm at 1000 °C, invented",
      recordedAt: new Date("2026-02-02T08:00:00Z"),
      recordedById: people.technician,
    },
  });
  await tx.characterisationDecision.create({
    data: {
      characterisationId: characterisation.id,
      decision: "accepted",
      decidedById: people.quality,
      decidedAt: new Date("2026-02-03T08:00:00Z"),
    },
  });
  return configuration;
};

/** What its runs follow; it says nothing of a budget, since their evaluations are written row by row too. */
const procedure = async (tx: Tx): Promise<string> => {
  const { id: procedureId } = await tx.procedure.create({ data: { key: "invented", title: "Invented" } });
  const at = new Date("2026-01-12T08:00:00Z");
  const revision = await tx.procedureRevision.create({
    data: {
      procedureId,
      revision: 1,
      state: "current",
      budgetInputs: "{}",
      verification: "invented",
      recordedAt: at,
      currentFrom: at,
    },
  });
  return revision.id;
};

export const buildWorld = (options: { readonly performerMaySignOff?: boolean } = {}) =>
  inScope({ kind: "laboratory" }, async (tx) => {
    await tx.laboratory.create({
      data: {
        name: "Invented Calibration Laboratory",
        addressLines: "2 Invented Lane\nNowhere",
        contact: "lab@example.test",
        performerMaySignOff: options.performerMaySignOff ?? false,
        isDemo: true,
      },
    });
    const north = await customer(tx, "North Furnaces");
    const south = await customer(tx, "South Castings");
    const quality = await person(tx, "Quinn Quality", ["quality-manager"]);
    const technician = await person(tx, "Toni Bench", ["technician", "signatory"]);
    const signatory = await person(tx, "Sam Signer", ["signatory"]);
    const people = {
      desk: await person(tx, "Dana Desk", ["front-desk"]),
      technician: await signing(tx, technician, quality.personId),
      signatory: await signing(tx, signatory, quality.personId),
      quality,
      north: await person(tx, "Nina North", customerRoles, north.id),
      south: await person(tx, "Sol South", customerRoles, south.id),
    };
    const { personId } = people.quality;
    await tx.provider.create({
      data: {
        name: "Invented National Institute",
        route: "nmi",
        state: "approved",
        approvedFrom: new Date("2025-01-01"),
        approvedUntil: new Date("2028-12-31"),
        scope: JSON.stringify(Object.keys(findings).map((kind) => ({ kind, range: "" }))),
      },
    });
    return {
      north,
      south,
      people,
      references: [
        await equipment(tx, "reference", "R-S1", personId),
        await equipment(tx, "reference", "R-S2", personId),
      ] as const,
      voltmeter: await equipment(tx, "voltmeter", "V-1", personId),
      scanner: await equipment(tx, "scanner", "X-1", personId),
      junction: await equipment(tx, "junction", "J-1", personId),
      procedureRevisionId: await procedure(tx),
      configuration: await furnace(tx, {
        technician: people.technician.personId,
        quality: people.quality.personId,
      }),
    };
  });

export type World = Awaited<ReturnType<typeof buildWorld>>;
