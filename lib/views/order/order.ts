import { readHistory } from "@/lib/data/audit/read-history";
import { withStandings } from "@/lib/data/certificate/with-standings";
import { awayOf } from "@/lib/data/custody/away-of";
import { asideSensors } from "@/lib/data/hold/aside-sensors";
import { handBacksOf } from "@/lib/data/hold/hand-backs-of";
import type { Tx } from "@/lib/data/in-scope";
import { loadDifferences } from "@/lib/data/order/difference-store";
import { furnaceRanges } from "@/lib/data/order/furnace-ranges";
import { loadOrder } from "@/lib/data/order/load-order";
import { providerChoices } from "@/lib/data/order/provider-choices";
import { certificatesOfSensors } from "@/lib/data/parts/certificates-of-sensors";
import { loadOpenQuestions } from "@/lib/data/portal/open-questions";
import { countedReports } from "@/lib/data/provider/report-store";
import { openRolls } from "@/lib/data/roll/open-rolls";
import { lastMove } from "@/lib/data/sensor/last-move";
import { noneStands } from "@/lib/domain/certificate/none-stands";
import type { Standing } from "@/lib/domain/certificate/standing";
import { storedTolerance } from "@/lib/domain/order/asked-tolerance";
import { reviewOrder } from "@/lib/domain/order/contract-review";
import { countedSensors } from "@/lib/domain/order/counted-sensors";
import {
  decisionRuleText,
  protectionLabels,
  temperatureUnitLabels,
  urgencyLabels,
} from "@/lib/domain/order/labels";
import { marksText } from "@/lib/domain/order/line-marks";
import { lineOptionPhrases } from "@/lib/domain/order/options";
import { ruleSetLabels, ruleSetPhrases } from "@/lib/domain/order/rule-set";
import { setpointTolerances } from "@/lib/domain/order/setpoint-tolerances";
import { sortedByWay } from "@/lib/domain/order/sorted-by-way";
import type { ProviderChoice } from "@/lib/domain/order/subcontracting";
import { nextOfOrder, orderThread } from "@/lib/domain/order/thread";
import { tolerancePhrase } from "@/lib/domain/order/tolerance-phrase";
import type { Order, OrderLine } from "@/lib/domain/order/types";
import { termsOfUseText } from "@/lib/domain/order/use-terms";
import type { Actor } from "@/lib/domain/staff/actor";
import { may, type Permission } from "@/lib/domain/staff/permissions";
import { answer, found } from "../view";

type Certificates = readonly {
  readonly sensorId: string;
  readonly number: string;
  readonly standing: Standing;
}[];

const lineOf = (line: OrderLine, certificates: Certificates, providers: readonly ProviderChoice[]) => ({
  position: line.position,
  typeLetter: line.typeLetter,
  construction: line.construction,
  protection: protectionLabels[line.protection],
  quantity: line.quantity,
  received: countedSensors(line.sensors).length,
  unit: temperatureUnitLabels[line.temperatureUnit],
  tolerance: tolerancePhrase(storedTolerance(line)),
  setpoints: setpointTolerances(line),
  use: termsOfUseText(line.useTerms, line.temperatureUnit),
  group: line.marks.groupName,
  options: lineOptionPhrases(line.options, line.temperatureUnit),
  goesOut: line.marks.providerId !== null,
  where: marksText(line.marks, providers.find(({ id }) => id === line.marks.providerId)?.name ?? ""),
  sensors: line.sensors.map(({ id, tag, serial, state, isReplaced }) => ({
    tag,
    serial,
    state,
    isReplaced: isReplaced === true,
    certificates: certificates
      .filter(({ sensorId }) => sensorId === id)
      .map(({ number, standing }) => ({ number, standing })),
  })),
});

const rightsOf = (actor: Actor, order: Order, missing: number, sensors: number) => {
  const has = (permission: Permission) => actor.kind === "system" || may(actor.roles, permission);
  const isOpen = order.state === "requested" || order.state === "recorded" || order.state === "accepted";
  return {
    mayTakeOver: order.state === "requested" && has("order.record"),
    mayAmend: order.state === "recorded" && has("order.record"),
    mayChange: order.state === "accepted" && has("order.accept"),
    mayAccept: order.state === "recorded" && has("order.accept"),
    mayReceive: order.state === "accepted" && missing > 0 && has("sensor.receive"),
    mayCancel: isOpen && has("order.accept"),
    mayAgreeRoll: order.state === "accepted" && has("order.record"),
    mayPrintLabels: sensors > 0 && has("sensor.receive"),
  };
};

const nameOf = async (tx: Tx, personId: string | null): Promise<string> => {
  if (!personId) return "";
  return (await tx.person.findUnique({ where: { id: personId }, select: { name: true } }))?.name ?? "";
};

/** One order: its terms, its lines with their sensors, what its review must settle, and its thread. */
export const orderView = (actor: Actor, number: string, now: Date) =>
  answer(actor, "laboratory.read", async (tx) => {
    const order = found(await loadOrder(tx, number));
    const customer = await tx.customer.findUniqueOrThrow({
      where: { id: order.customerId },
      select: { id: true, name: true },
    });
    const quantity = order.lines.reduce((sum, line) => sum + line.quantity, 0);
    const sensors = order.lines.flatMap((line) => line.sensors);
    const certificates = await withStandings(
      tx,
      await certificatesOfSensors(
        tx,
        sensors.map(({ id }) => id),
      ),
    );
    const counted = countedSensors(sensors);
    const missing = quantity - counted.length;
    const handBacks = await handBacksOf(tx, order);
    const away = await awayOf(
      tx,
      sensors.map(({ id }) => id),
    );
    const { held } = await asideSensors(tx, [order.id], sensors);
    const reports = await countedReports(
      tx,
      sensors.map(({ id }) => id),
    );
    // Handed back with no certificate of ours and none of a provider's; or to be handed back so.
    const isUnmeasured = (sensorId: string): boolean => {
      if (handBacks.has(sensorId)) return handBacks.get(sensorId) !== "certified";
      const isGone = sensors.some(({ id, state }) => id === sensorId && state === "collected");
      return isGone && !reports.has(sensorId) && !certificates.some((one) => one.sensorId === sensorId);
    };
    const { ours, apart } = sortedByWay(order, isUnmeasured);
    const providers = await providerChoices(tx, now);
    const history = await readHistory(tx, "order", [order.id]);
    return {
      number: order.number,
      version: order.version,
      state: order.state,
      customer,
      purchaseOrder: order.purchaseOrder ?? "",
      rule: decisionRuleText(order),
      agreedBy: order.decisionRuleAgreedBy ?? "",
      agreedOn: order.decisionRuleAgreedOn ?? "",
      uncertaintyDigits: order.uncertaintyDigits,
      note: order.note,
      urgency: urgencyLabels[order.urgency],
      isExpress: order.urgency === "express",
      ruleSet: ruleSetLabels[order.ruleSet],
      ruleSetPhrases: ruleSetPhrases[order.ruleSet],
      recordedBy: await nameOf(tx, order.recordedById),
      recordedAt: order.recordedAt.toISOString(),
      acceptedBy: await nameOf(tx, order.acceptedById),
      acceptedAt: order.acceptedAt?.toISOString() ?? null,
      quantity,
      received: counted.length,
      lines: order.lines.map((line) => lineOf(line, certificates, providers)),
      /** Sensors awaited in the place of those that go back unmeasured. */
      awaited:
        order.state === "accepted" ? Math.min(Math.max(0, missing), sensors.length - counted.length) : 0,
      findings:
        order.state === "recorded" || order.state === "requested"
          ? reviewOrder(order, await furnaceRanges(tx))
          : [],
      openDifferences: (await loadDifferences(tx, order.id)).filter(({ isSettled }) => !isSettled).length,
      openRolls: await openRolls(tx, order),
      thread: orderThread(order.state, quantity, ours, apart),
      next: nextOfOrder(
        order.state,
        quantity,
        sensors.map(({ state }) => state),
        {
          replaced: sensors.length - counted.length,
          toHandBack: [...handBacks.values()].filter((why) => why !== "certified").length,
          forProvider: order.lines
            .flatMap(({ marks, sensors: own }) => (marks.providerId === null ? [] : own))
            .filter(({ id, state }) => state === "received" && !handBacks.has(id) && !held.has(id)).length,
          onHold: sensors.filter(({ id, state }) => state === "received" && held.has(id)).length,
          isAsked: (await loadOpenQuestions(tx, { orderId: order.id })).length > 0,
          away: sensors.filter(({ id, state }) => state === "issued" && away.has(id)).length,
          withdrawn: sensors.filter(
            ({ id, state }) =>
              state === "issued" &&
              !away.has(id) &&
              noneStands(certificates.filter(({ sensorId }) => sensorId === id)),
          ).length,
        },
      ),
      last: await lastMove(
        tx,
        sensors.map(({ id }) => id),
        history,
      ),
      history,
      ...rightsOf(actor, order, missing, sensors.length),
    };
  });

export type OrderPage = Awaited<ReturnType<typeof orderView>>;
