import { readHistory } from "@/lib/data/audit/read-history";
import { withStandings } from "@/lib/data/certificate/with-standings";
import { awayOf } from "@/lib/data/custody/away-of";
import { holdsOf } from "@/lib/data/hold/holds-of";
import { openQuestionsOf } from "@/lib/data/hold/open-questions";
import type { Tx } from "@/lib/data/in-scope";
import { photosOf } from "@/lib/data/intake/photo-store";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { externalOf } from "@/lib/data/parts/external-of";
import { lastMove } from "@/lib/data/sensor/last-move";
import { readLastResults, readRunsOfSensor, readSensor } from "@/lib/data/sensor/read-sensor";
import { noneStands } from "@/lib/domain/certificate/none-stands";
import { readStoredPoint } from "@/lib/domain/evidence/read-stored-point";
import { assessIntake } from "@/lib/domain/intake/assess-intake";
import { checkLabels, readFindings, verdictLabels } from "@/lib/domain/intake/findings";
import { defaultIntakePolicy } from "@/lib/domain/intake/policy";
import { type Protection, protectionLabels } from "@/lib/domain/order/labels";
import { tolerancePhrase } from "@/lib/domain/order/tolerance-phrase";
import type { OrderState } from "@/lib/domain/order/transitions";
import { nextOfExternal } from "@/lib/domain/parts/external-parts";
import { readBuild } from "@/lib/domain/sensor/build";
import { externalThread } from "@/lib/domain/sensor/external-thread";
import { handBackOf } from "@/lib/domain/sensor/hand-back";
import { intakeFindings } from "@/lib/domain/sensor/intake-findings";
import {
  type Condition,
  conditionLabels,
  type Grounding,
  groundingLabels,
  type Polarity,
  polarityLabels,
  type TypeCheck,
  typeCheckLabels,
} from "@/lib/domain/sensor/labels";
import { nextOfSensor, sensorThread } from "@/lib/domain/sensor/thread";
import type { SensorState } from "@/lib/domain/sensor/transitions";
import type { Actor } from "@/lib/domain/staff/actor";
import { may } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

type Row = NonNullable<Awaited<ReturnType<typeof readSensor>>>;

/** As they were judged at intake; one taken in before checks were kept is held against the limits that held then. */
const checksOf = (row: Row, intake: NonNullable<Row["intake"]>) => {
  const kept = readFindings(intake.findings);
  if (kept.length > 0) return kept;
  return assessIntake(defaultIntakePolicy, row.typeLetter, {
    loopResistanceOhm: intake.loopResistanceOhm,
    insulationMegaohm: intake.insulationMegaohm,
    polarity: intake.polarity as Polarity,
    typeCheck: intake.typeCheck as TypeCheck,
    grounding: intake.grounding as Grounding,
    build: {},
  });
};

const intakeOf = (row: Row, intake: NonNullable<Row["intake"]>, takenInBy: string) => {
  const condition = intake.condition as Condition;
  const polarity = intake.polarity as Polarity;
  const typeCheck = intake.typeCheck as TypeCheck;
  const checks = checksOf(row, intake);
  return {
    receivedOn: intake.receivedOn.toISOString().slice(0, 10),
    takenInBy,
    takenInAt: intake.takenInAt.toISOString(),
    condition: conditionLabels[condition],
    conditionNote: intake.conditionNote,
    loopResistanceOhm: intake.loopResistanceOhm,
    insulationMegaohm: intake.insulationMegaohm,
    polarity: polarityLabels[polarity],
    typeCheck: typeCheckLabels[typeCheck],
    grounding: groundingLabels[intake.grounding as Grounding],
    findings: intakeFindings({ condition, conditionNote: intake.conditionNote }, checks),
    checks: checks.map(({ check, verdict, words }) => ({
      check: checkLabels[check],
      verdict,
      verdictLabel: verdictLabels[verdict],
      words,
    })),
  };
};

const resultsOf = async (tx: Tx, runId: string, sensorId: string) =>
  (await readLastResults(tx, runId, sensorId))
    .map((row) => ({ position: row.position, point: readStoredPoint(row.point) }))
    .map(({ position, point }) => ({
      position,
      nominalCelsius: String(point.nominalCelsius),
      state: point.state,
      error: point.state === "measured" ? point.printed.errorCelsius : "",
      expanded: point.state === "measured" ? point.printed.expandedCelsius : "",
      conformity: point.state === "measured" ? point.conformity.state : null,
      reason: point.state === "measured" ? "" : point.reason,
    }));

const personName = async (tx: Tx, id: string | undefined): Promise<string> =>
  (id && (await tx.person.findUnique({ where: { id }, select: { name: true } }))?.name) || "";

/** One sensor: what it is, how it came, where it stands, what was found. */
export const sensorView = (actor: Actor, tag: string) =>
  answer(actor, "laboratory.read", async (tx) => {
    const row = found(await readSensor(tx, tag));
    const places = await readRunsOfSensor(tx, row.id);
    const runId = places[0]?.run.id;
    const certificates = await withStandings(tx, await certificatesOfSensors(tx, [row.id]));
    const history = await readHistory(tx, "sensor", [row.id]);
    const state = row.state as SensorState;
    const { order } = row.line;
    const holds = await holdsOf(tx, [row.id]);
    const unanswered = await openQuestionsOf(
      tx,
      holds.map(({ holdId }) => holdId),
    );
    const external = (
      await externalOf(tx, [{ providerId: row.line.providerId, sensors: [{ id: row.id }] }])
    ).get(row.id);
    const away = await awayOf(tx, [row.id]);
    const isTheirTurn =
      external &&
      ((state === "received" && holds.length === 0 && order.state === "accepted") ||
        (state === "issued" && away.has(row.id)));
    return {
      tag: row.tag,
      isExternal: external !== undefined,
      serial: row.serial,
      typeLetter: row.typeLetter,
      construction: row.construction,
      protection: protectionLabels[row.protection as Protection],
      state,
      version: row.version,
      build: readBuild(row.build),
      mayStateBuild:
        (state === "received" || state === "loaded") &&
        (actor.kind === "system" || may(actor.roles, "sensor.receive")),
      order: { number: order.number, position: row.line.position, state: order.state },
      customer: order.customer,
      setpoints: `${row.line.setpoints.map(({ typed }) => typed).join(", ")} °${row.line.temperatureUnit}`,
      tolerance: tolerancePhrase(row.line),
      intake: row.intake && intakeOf(row, row.intake, await personName(tx, row.intake.takenInById)),
      runs: places.map((place) => ({
        number: place.run.number,
        state: place.run.state,
        createdAt: place.run.createdAt.toISOString(),
        place: place.place,
        channel: place.channel,
      })),
      results: runId ? await resultsOf(tx, runId, row.id) : [],
      certificates: certificates.map(({ number, signedAt, standing }) => ({
        ...{ number, standing },
        signedAt: signedAt.toISOString(),
      })),
      thread: external
        ? externalThread(state, external)
        : sensorThread(state, state === "collected" && certificates.length === 0),
      next: isTheirTurn
        ? nextOfExternal(external, state)
        : nextOfSensor(
            state,
            holds.map(({ holdId, isToBeReturned }) => ({
              isToBeReturned,
              isAnswerOpen: unanswered.has(holdId),
            })),
            order.state as OrderState,
            noneStands(certificates),
          ),
      handBack: handBackOf({ state, orderState: order.state, isAway: away.has(row.id), holds }),
      last: await lastMove(tx, [row.id]),
      history,
      photos: (await photosOf(tx, row.id)).map((photo) => ({
        ...photo,
        takenAt: photo.takenAt.toISOString(),
      })),
      mayCollect:
        !away.has(row.id) &&
        (state === "issued" || state === "received") &&
        (actor.kind === "system" || may(actor.roles, "sensor.release")),
      mayPrintLabel: actor.kind === "system" || may(actor.roles, "sensor.receive"),
      maySeeReview: actor.kind === "system" || may(actor.roles, "review.read"),
    };
  });

export type SensorPage = Awaited<ReturnType<typeof sensorView>>;
