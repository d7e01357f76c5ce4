import { TypeLetter } from "@/lib/domain/evidence/schema";
import { readTolerance } from "@/lib/domain/order/asked-tolerance";
import type { DecisionRuleKind, Protection, TemperatureUnit, Urgency } from "@/lib/domain/order/labels";
import type { WorkPlace } from "@/lib/domain/order/line-marks";
import { readLineOptions } from "@/lib/domain/order/options";
import type { RuleSet } from "@/lib/domain/order/rule-set";
import type { OrderState } from "@/lib/domain/order/transitions";
import type { Order, OrderLine } from "@/lib/domain/order/types";
import type { SensorState } from "@/lib/domain/sensor/transitions";
import type { Prisma } from "@/lib/generated/prisma/client";

/** What is read with an order, in the order in which it is shown. */
export const orderParts = {
  lines: {
    orderBy: { position: "asc" },
    include: {
      setpoints: { orderBy: { position: "asc" } },
      sensors: { orderBy: { tag: "asc" }, select: { id: true, tag: true, serial: true, state: true } },
    },
  },
} as const satisfies Prisma.OrderInclude;

export type OrderRow = Prisma.OrderGetPayload<{ include: typeof orderParts }>;

/** The words are closed lists in the database too (CHECK constraints), so they are named, not judged, here. */
const lineOf = (row: OrderRow["lines"][number], replaced: ReadonlySet<string>): OrderLine => ({
  id: row.id,
  position: row.position,
  typeLetter: TypeLetter.parse(row.typeLetter),
  construction: row.construction,
  protection: row.protection as Protection,
  quantity: row.quantity,
  setpoints: row.setpoints.map(({ typed, celsius }) => ({ typed, celsius })),
  ...readTolerance(row, row.temperatureUnit as TemperatureUnit),
  useTerms: {
    useFromCelsius: row.useFromCelsius,
    useToCelsius: row.useToCelsius,
    maximumCelsius: row.maximumCelsius,
    largestIntervalCelsius: row.largestIntervalCelsius,
    intervalRule: row.intervalRule,
  },
  options: readLineOptions(row.options),
  marks: {
    groupName: row.groupName,
    performedAt: row.performedAt as WorkPlace,
    siteAddress: row.siteAddress,
    providerId: row.providerId,
  },
  sensors: row.sensors.map((sensor) => ({
    ...sensor,
    state: sensor.state as SensorState,
    ...(replaced.has(sensor.id) ? { isReplaced: true } : {}),
  })),
});

/** `replaced`: sensors that another one is awaited for. */
export const orderOf = (row: OrderRow, replaced: ReadonlySet<string> = new Set()): Order => ({
  id: row.id,
  number: row.number,
  customerId: row.customerId,
  purchaseOrder: row.purchaseOrder,
  state: row.state as OrderState,
  origin: row.origin,
  urgency: row.urgency as Urgency,
  ruleSet: row.ruleSet as RuleSet,
  decisionRule: row.decisionRule as DecisionRuleKind,
  guardBandRatio: row.guardBandRatio,
  falseAcceptancePercent: row.falseAcceptancePercent,
  decisionRuleAgreedBy: row.decisionRuleAgreedBy,
  decisionRuleAgreedOn: row.decisionRuleAgreedOn?.toISOString().slice(0, 10) ?? null,
  uncertaintyDigits: row.uncertaintyDigits,
  note: row.note,
  recordedById: row.recordedById,
  recordedAt: row.recordedAt,
  acceptedById: row.acceptedById,
  acceptedAt: row.acceptedAt,
  version: row.version,
  lines: row.lines.map((line) => lineOf(line, replaced)),
});
