import { CertificateContent, type CertificateStandard } from "@/lib/domain/certificate/content";
import { readStoredPoint } from "@/lib/domain/evidence/read-stored-point";
import { readEvidenceHead } from "@/lib/domain/review/evidence-head";
import type { TraceCalibration, TraceParts, TraceRole, TraceStandard } from "@/lib/domain/trace/trace-parts";
import type { Tx } from "../in-scope";
import { loadTraceCalibrations } from "./load-trace-calibrations";
import {
  acceptedInForce,
  loadThermometers,
  loadUsedEquipment,
  namedCalibration,
  type UsedEquipment,
} from "./load-used-equipment";
import { measuredUnder } from "./measured-under";

/** Positions of what a certificate speaks of; of one measurement of one sensor: null alone. */
export const tracePositions = async (tx: Tx, certificateId: string): Promise<readonly (number | null)[]> => {
  const parts = await tx.certificatePart.findMany({
    where: { certificateId },
    select: { position: true },
    orderBy: { position: "asc" },
  });
  return parts.length === 0 ? [null] : parts.map(({ position }) => position);
};

/** A certificate as if it spoke of one of its parts alone: the set's own fields stand for the certificate's. */
const loadPart = async (tx: Tx, certificateId: string, position: number | null) => {
  const { content: stored, ...signed } = await tx.certificate.findUniqueOrThrow({
    where: { id: certificateId },
  });
  const content = CertificateContent.parse(JSON.parse(stored));
  const { number, signedAt } = await measuredUnder(tx, signed, content);
  const certificate = { ...signed, number, signedAt };
  if (position === null) return { ...certificate, content };
  const part = await tx.certificatePart.findUniqueOrThrow({
    where: { certificateId_position: { certificateId, position } },
  });
  const { sensorId, runId, evaluationId } = part;
  const set = content.sets?.[position - 1];
  if (!set) throw new Error(`certificate ${certificate.number} states no set ${position}`);
  const { item, receivedOn, performedFrom, performedTo, run, conditions, rows, standards } = set;
  const own = { item, receivedOn, performedFrom, performedTo, run, conditions, rows, standards };
  return { ...certificate, sensorId, runId, evaluationId, content: { ...content, ...own } };
};

const loadCertificate = async (tx: Tx, certificateId: string, position: number | null) => {
  const certificate = await loadPart(tx, certificateId, position);
  const evaluation = await tx.evaluation.findUniqueOrThrow({ where: { id: certificate.evaluationId } });
  const run = await tx.run.findUniqueOrThrow({
    where: { id: certificate.runId },
    include: { places: true, setpoints: { orderBy: { position: "asc" } } },
  });
  return {
    ...certificate,
    head: readEvidenceHead(evaluation.evidence),
    run,
  };
};

type Certificate = Awaited<ReturnType<typeof loadCertificate>>;

type Used = {
  readonly role: TraceRole;
  readonly equipment: UsedEquipment;
  readonly calibrationId: string | null;
};

const usedStandard = (used: Used, calibrations: ReadonlyMap<string, TraceCalibration>): TraceStandard => ({
  role: used.role,
  equipment: {
    id: used.equipment.id,
    tag: used.equipment.tag,
    kind: used.equipment.kind,
    description: `${used.equipment.maker} ${used.equipment.model}`.trim(),
    serial: used.equipment.serial,
  },
  calibration: used.calibrationId ? (calibrations.get(used.calibrationId) ?? null) : null,
});

/** A line of the certificate: what it says stands, also where the record cannot be found. */
const statedStandard = (
  line: CertificateStandard,
  equipment: UsedEquipment | undefined,
  calibration: TraceCalibration | undefined,
): TraceStandard => ({
  role: line.role,
  equipment: {
    id: equipment?.id ?? null,
    tag: line.tag,
    kind: equipment?.kind ?? line.role,
    description: line.description,
    serial: line.serial,
  },
  calibration:
    line.calibrationCertificate === ""
      ? null
      : (calibration ?? {
          id: null,
          certificate: line.calibrationCertificate,
          issuer: line.issuer,
          accreditation: line.accreditation,
          route: line.route,
          performedOn: line.performedOn,
          dueOn: line.dueOn,
          findings: null,
          statement: "",
          documentSha256: null,
          parents: [],
          inHouse: null,
        }),
});

const resultsOf = async (tx: Tx, certificate: Certificate): Promise<TraceParts["results"]> => {
  const rows = await tx.result.findMany({
    where: { evaluationId: certificate.evaluationId, sensorId: certificate.sensorId, state: "measured" },
  });
  return certificate.run.setpoints.flatMap((setpoint) => {
    const row = rows.find(({ setpointId }) => setpointId === setpoint.id);
    const point = row ? readStoredPoint(row.point) : null;
    if (!row || point?.state !== "measured") return [];
    const line = certificate.content.rows.find(
      ({ nominalCelsius }) => nominalCelsius === point.printed.nominalCelsius,
    );
    const stated = line?.setpoint ?? `${point.printed.nominalCelsius} °C`;
    return [{ id: row.id, setpointId: setpoint.id, position: setpoint.position, setpoint: stated, point }];
  });
};

const equipmentOf = async (tx: Tx, certificate: Certificate) => {
  const { run, content, sensorId } = certificate;
  const place = run.places.find((candidate) => candidate.sensorId === sensorId);
  const thermometers = await loadThermometers(tx, run.id, certificate.signedAt);
  const equipment = await loadUsedEquipment(
    tx,
    [
      ...run.places.flatMap(({ equipmentId, junctionId, leadId }) =>
        [equipmentId, junctionId, leadId].flatMap((id) => id ?? []),
      ),
    ],
    [...content.standards.map(({ tag }) => tag), ...thermometers.values()],
  );
  const byId = (id: string | null | undefined) => equipment.find((one) => one.id === id);
  const byTag = (tag: string | undefined) => equipment.find((one) => one.tag === tag);
  const referenceJunctions = new Set(
    run.places.filter(({ kind }) => kind === "reference").map(({ junctionId }) => byId(junctionId)?.tag),
  );
  return { place, thermometers, byId, byTag, referenceJunctions };
};

/** What a certificate's chain is composed from, of one of its parts where it has several; `inHouse`: our own certificates that its standards stand on. */
export const loadTraceParts = async (
  tx: Tx,
  certificateId: string,
  position: number | null = null,
): Promise<{ readonly parts: TraceParts; readonly inHouse: readonly string[] }> => {
  const certificate = await loadCertificate(tx, certificateId, position);
  const { content, run, head, signedAt } = certificate;
  const { place, thermometers, byId, byTag, referenceJunctions } = await equipmentOf(tx, certificate);
  const used = (role: TraceRole, equipment: UsedEquipment | undefined): Used[] =>
    equipment
      ? [{ role, equipment, calibrationId: acceptedInForce(equipment, content.performedFrom, signedAt) }]
      : [];
  const thermometersOf = (isOfRun: boolean): Used[] =>
    content.standards
      .filter(({ role, tag }) => role === "junction" && referenceJunctions.has(tag) === isOfRun)
      .flatMap(({ tag }) => used("thermometer", byTag(thermometers.get(tag))));
  const beside = {
    run: thermometersOf(true),
    sensor: [...thermometersOf(false), ...used("lead", byId(place?.leadId))],
  };
  const idOf = ({ tag, calibrationCertificate }: CertificateStandard) =>
    namedCalibration(byTag(tag), calibrationCertificate, signedAt);
  const calibrations = await loadTraceCalibrations(tx, [
    ...content.standards.flatMap((line) => idOf(line) ?? []),
    ...[...beside.run, ...beside.sensor].flatMap(({ calibrationId }) => calibrationId ?? []),
  ]);
  const isOfSensor = ({ role, tag }: CertificateStandard) =>
    role === "junction" && !referenceJunctions.has(tag);
  const standardOf = (line: CertificateStandard) =>
    statedStandard(line, byTag(line.tag), calibrations.get(idOf(line) ?? ""));
  const { characterisation } = head.configuration;
  return {
    inHouse: [...calibrations.values()].flatMap(({ inHouseCertificateId }) => inHouseCertificateId ?? []),
    parts: {
      certificate: certificate.number,
      issuer: content.laboratory.name,
      performedFrom: content.performedFrom,
      performedTo: content.performedTo,
      sensor: content.item.tag,
      run: {
        id: run.id,
        number: run.number,
        evaluationId: certificate.evaluationId,
        furnace: `${content.run.furnace}, ${content.run.configuration}`,
        characterisedOn: characterisation.performedOn ?? null,
        characterisedUntil: characterisation.validUntil ?? null,
      },
      results: await resultsOf(tx, certificate),
      ofRun: [
        ...content.standards.filter((line) => !isOfSensor(line)).map(standardOf),
        ...beside.run.map((one) => usedStandard(one, calibrations)),
      ],
      ofSensor: [
        ...content.standards.filter(isOfSensor).map(standardOf),
        ...beside.sensor.map((one) => usedStandard(one, calibrations)),
      ],
    },
  };
};
