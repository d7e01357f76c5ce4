import { type SensorFilter, type SensorQuery, shownSensors } from "@/lib/domain/sensor/list-query";
import { Prisma } from "@/lib/generated/prisma/client";
import { toHandBack, toLoad } from "./hand-back";
import { sensorHas } from "./sensor-words";

export type SensorAsked = { readonly query: SensorQuery; readonly today: string };

/** "here" is written out: only so does the planner see that the index of what is here has them all. */
const stateCondition = (filter: SensorFilter): readonly Prisma.Sql[] => {
  if (filter === "all") return [];
  return [filter === "here" ? Prisma.sql`s.state <> 'collected'` : Prisma.sql`s.state = ${filter}`];
};

const open = Prisma.sql`NOT EXISTS (SELECT FROM hold_release r WHERE r.hold_id = h.id)`;

/** From the few holds that stand, by key, to their orders' sensors or their one: a join would walk all lines. */
const held = Prisma.sql`(
  s.id = ANY (ARRAY(SELECT h.sensor_id FROM hold h WHERE h.sensor_id IS NOT NULL AND ${open}))
  OR s.order_line_id = ANY (ARRAY(SELECT l.id FROM order_line l WHERE l.order_id = ANY (
       ARRAY(SELECT h.order_id FROM hold h WHERE h.sensor_id IS NULL AND ${open})))))`;

/** From the few lines that are subcontracted; what goes back unmeasured is not theirs any more. */
const toProvider = Prisma.sql`(s.state = 'received' AND NOT ${toHandBack} AND s.order_line_id = ANY (ARRAY(
  SELECT l.id FROM order_line l JOIN customer_order o ON o.id = l.order_id
   WHERE l.provider_id IS NOT NULL AND o.state = 'accepted')))`;
const providerToCheck = Prisma.sql`s.id = ANY (ARRAY(SELECT r.sensor_id FROM provider_report r
   WHERE NOT EXISTS (SELECT FROM provider_report_decision d WHERE d.report_id = r.id)))`;

const onlyCondition = ({ query, today }: SensorAsked): readonly Prisma.Sql[] => {
  switch (query.only) {
    case "load":
      return [toLoad];
    case "provider":
      return [toProvider];
    case "provider-check":
      return [providerToCheck];
    case "hand-back":
      return [toHandBack];
    case "late":
      return [
        Prisma.sql`s.state NOT IN ('issued', 'collected') AND s.order_line_id IN (
          SELECT l.id FROM customer_order o JOIN order_line l ON l.order_id = o.id
           WHERE o.state = 'accepted' AND o.promised_on < ${today}::date)`,
      ];
    case "held":
      return [held];
    default:
      return [];
  }
};

/** What a sensor must be to stand in the list; `s` is the sensor. */
export const sensorConditions = (asked: SensorAsked): readonly Prisma.Sql[] => {
  const { query } = asked;
  return [
    ...stateCondition(shownSensors(query)),
    ...onlyCondition(asked),
    ...(query.customer ? [Prisma.sql`s.customer_id = ${query.customer}::uuid`] : []),
    ...(query.type ? [Prisma.sql`s.type_letter = ${query.type}`] : []),
    ...(query.find ? [sensorHas(Prisma.sql`s`, query.find)] : []),
  ];
};
