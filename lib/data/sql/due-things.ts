import type { Tx } from "@/lib/data/in-scope";

export type DueRow = {
  readonly due_kind: string;
  readonly subject_id: string;
  readonly title: string;
  readonly due_on: Date;
  /** The equipment's or the furnace's id: whose page it is. */
  readonly page_id: string;
  readonly told: readonly string[];
};

/**
 * Everything that has a due day, with what was told of that day. What counts is the last accepted calibration and
 * characterisation performed on or before the day, and the last check or maintenance that did not fail; a calibration
 * counts as a check. Equipment that is not yet, or no longer, in use is left out.
 */
export const dueThingRows = (tx: Tx, today: Date): Promise<DueRow[]> =>
  tx.$queryRaw<DueRow[]>`
    WITH used AS (
      SELECT id, tag, received_on, check_interval_days, maintenance_interval_days
        FROM equipment WHERE state IN ('verified', 'in-service', 'suspect')
    ), calibrated AS (
      SELECT DISTINCT ON (c.equipment_id) c.equipment_id, c.performed_on, c.due_on
        FROM calibration c
       WHERE c.performed_on <= ${today}::date
         AND (SELECT d.decision FROM calibration_decision d WHERE d.calibration_id = c.id ORDER BY d.id DESC LIMIT 1) = 'accepted'
       ORDER BY c.equipment_id, c.performed_on DESC, c.recorded_at DESC
    ), entered AS (
      SELECT equipment_id, max(happened_on) FILTER (WHERE kind IN ('intermediate-check', 'check-after-anneal')) AS checked_on,
             max(happened_on) FILTER (WHERE kind = 'maintenance') AS maintained_on
        FROM equipment_entry
       WHERE kind IN ('intermediate-check', 'check-after-anneal', 'maintenance') AND outcome <> 'failed' AND happened_on <= ${today}::date
       GROUP BY equipment_id
    ), characterised AS (
      SELECT DISTINCT ON (c.configuration_id) c.configuration_id, c.valid_until
        FROM characterisation c
       WHERE c.performed_on <= ${today}::date
         AND (SELECT d.decision FROM characterisation_decision d WHERE d.characterisation_id = c.id ORDER BY d.id DESC LIMIT 1) = 'accepted'
       ORDER BY c.configuration_id, c.performed_on DESC, c.recorded_at DESC
    ), due AS (
      SELECT 'calibration' AS due_kind, used.id AS subject_id, used.tag AS title, calibrated.due_on, used.id AS page_id
        FROM used JOIN calibrated ON calibrated.equipment_id = used.id
      UNION ALL
      SELECT 'intermediate-check', used.id, used.tag,
             coalesce(greatest(entered.checked_on, calibrated.performed_on), used.received_on) + used.check_interval_days, used.id
        FROM used LEFT JOIN entered ON entered.equipment_id = used.id LEFT JOIN calibrated ON calibrated.equipment_id = used.id
      UNION ALL
      SELECT 'maintenance', used.id, used.tag,
             coalesce(entered.maintained_on, used.received_on) + used.maintenance_interval_days, used.id
        FROM used LEFT JOIN entered ON entered.equipment_id = used.id
      UNION ALL
      SELECT 'characterisation', f.id, furnace.tag || ', ' || f.name, characterised.valid_until, furnace.id
        FROM furnace_configuration f
        JOIN furnace ON furnace.id = f.furnace_id
        JOIN characterised ON characterised.configuration_id = f.id
        LEFT JOIN equipment ON equipment.id = furnace.equipment_id
       WHERE equipment.state IS DISTINCT FROM 'retired'
    )
    SELECT due.*,
           ARRAY(SELECT r.stage FROM reminder r
                  WHERE r.due_kind = due.due_kind AND r.subject_id = due.subject_id AND r.due_on = due.due_on
                  ORDER BY r.stage) AS told
      FROM due WHERE due.due_on IS NOT NULL
     ORDER BY due.due_on, due.title, due.due_kind`;
