import type { Tx } from "../in-scope";

export type FurnaceWorkRow = {
  readonly kind: "run" | "characterisation";
  readonly id: string;
  readonly number: string;
  readonly furnaceId: string;
  /** Its tag. */
  readonly furnace: string;
  readonly isMeasuring: boolean;
  readonly since: Date;
  readonly startedAt: Date | null;
  /** Hot at the latest since: a characterisation by its first survey that was recorded. */
  readonly hotBy: Date | null;
  readonly rampUpCelsiusPerHour: number | null;
  readonly rampDownCelsiusPerHour: number | null;
  readonly celsius: readonly number[];
  readonly sensors: number;
  /** Numbers of the orders its sensors are of. */
  readonly orders: readonly string[];
  /** Of a characterisation, JSON text; and its surveys that are recorded, as kind and temperature. */
  readonly plan: string | null;
  readonly surveyed: readonly string[];
};

/** What is measured in a furnace or planned for it: runs and characterisations, what is hot first, then by age. */
export const furnaceWork = (tx: Tx): Promise<FurnaceWorkRow[]> =>
  tx.$queryRaw<FurnaceWorkRow[]>`
    SELECT w.kind, w.id::text AS id, w.number, f.id::text AS "furnaceId", f.tag AS furnace, w.state = 'measuring' AS "isMeasuring",
           w.created_at AS since, w.started_at AS "startedAt",
           coalesce(w.started_at, (SELECT min(s.recorded_at) FROM characterisation_survey s
                                    WHERE w.kind = 'characterisation' AND s.characterisation_run_id = w.id)) AS "hotBy",
           f.ramp_up_celsius_per_hour AS "rampUpCelsiusPerHour", f.ramp_down_celsius_per_hour AS "rampDownCelsiusPerHour",
           ARRAY(SELECT p.celsius FROM run_setpoint p WHERE p.run_id = w.id ORDER BY p.position) AS celsius,
           load.sensors, load.orders, w.plan,
           ARRAY(SELECT DISTINCT s.kind || ' ' || s.celsius FROM characterisation_survey s
                  WHERE w.kind = 'characterisation' AND s.characterisation_run_id = w.id) AS surveyed
      FROM (SELECT 'run' AS kind, id, number, configuration_id, state, created_at, started_at, NULL AS plan
              FROM run WHERE state IN ('planned', 'measuring')
            UNION ALL
            SELECT 'characterisation', id, number, configuration_id, state, created_at, NULL, plan
              FROM characterisation_run WHERE state IN ('planned', 'measuring')) AS w
      JOIN furnace_configuration c ON c.id = w.configuration_id JOIN furnace f ON f.id = c.furnace_id
      CROSS JOIN LATERAL (
        SELECT count(*)::int AS sensors, coalesce(array_agg(DISTINCT o.number ORDER BY o.number), '{}') AS orders
          FROM load_place p JOIN sensor s ON s.id = p.sensor_id
          JOIN order_line l ON l.id = s.order_line_id JOIN customer_order o ON o.id = l.order_id
         WHERE p.run_id = w.id AND p.kind = 'sensor') AS load
     ORDER BY "isMeasuring" DESC, since, w.number`;
